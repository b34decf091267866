import { newcomer } from '../../../core/herd/herd-animal.ts';
import type { Jug } from '../../../core/mixing/jug.ts';
import { DAY_MS } from '../../../core/moment.ts';
import type { SampleMethod } from '../../../core/worms/counting-methods.ts';
import { GOAT, type TestBarn, testBarn } from './test-barn.ts';

/** The factor 50 of a slide: 4 g in 60 mL, 0.3 mL counted. */
export const FIFTY: SampleMethod = { kind: 'slide', dungGrams: 4, suspensionMl: 60, countedMl: 0.3 };

/** A barn with so many more goats, named G1, G2 and on. */
export function barnWithGoats(count: number): { barn: TestBarn; ids: string[] } {
  const barn = testBarn();
  const ids = Array.from({ length: count }, (_, i) => `g-${i + 1}`);
  const { context } = barn.barn;
  const added = ids.map((id, i) =>
    newcomer({ ...GOAT, id, name: `G${i + 1}`, tag: `9980000000010${String(i).padStart(2, '0')}` }),
  );
  for (const animal of added) barn.store.animals.add(animal, 'Wren');
  context.memory = { ...context.memory, animals: [...context.memory.animals, ...added] };
  return { barn, ids };
}

/** Weighs and doses an animal with the jug of the test barn; returns the id of the treatment. */
export function dose(barn: TestBarn, id: string, outcome: 'whole' | 'part' | 'spat-out' = 'whole'): string {
  const { memory } = barn.barn.context;
  if (memory.round.phase.step === 'no-jug') {
    barn.send({ type: 'take-jug', jugId: 'jug-1' });
    barn.send({ type: 'prove-jug', jugId: 'jug-1', deliberate: false });
  }
  barn.weigh(0, 1500);
  barn.send({ type: 'read-tag', tag: memory.animals.find((animal) => animal.id === id)?.tag ?? '' });
  barn.weigh(15_400, 4000);
  acceptAll(barn);
  const { phase } = barn.barn.context.memory.round;
  if (phase.step !== 'offered') throw new Error(`no dose was offered to ${id}: ${phase.step}`);
  const given = barn.send({ type: 'give', offerId: phase.offer.id, outcome });
  if (!given.ok) throw new Error(given.message);
  barn.send({ type: 'next' });
  barn.weigh(0, 1500);
  return barn.barn.context.memory.recent[0]?.treatment.id ?? '';
}

/** Accepts what the kiosk asks about before it offers a dose. */
function acceptAll(barn: TestBarn): void {
  const { phase } = barn.barn.context.memory.round;
  if (phase.step !== 'cautions') return;
  for (const { code, strength } of phase.decision.cautions)
    if (strength === 'ask') barn.send({ type: 'accept', code });
}

/** Puts another strength or life to the jug of the test barn. */
export function changeJug(barn: TestBarn, change: Partial<Jug>): void {
  const { context } = barn.barn;
  context.memory = { ...context.memory, jugs: context.memory.jugs.map((jug) => ({ ...jug, ...change })) };
}

/** Plans a test of levamisole in goats; returns its id. */
export function plan(
  barn: TestBarn,
  treated: readonly string[],
  {
    untreated = [],
    design = 'paired',
  }: { untreated?: readonly string[]; design?: 'paired' | 'unpaired' } = {},
): string {
  const planned = barn.send({
    type: 'plan-test',
    medicineId: 'levamisole',
    species: 'goat',
    design,
    protocol: 'clinical',
    method: FIFTY,
    treated: [...treated],
    untreated: [...untreated],
  });
  if (!planned.ok) throw new Error(planned.message);
  return barn.barn.context.memory.reductionTests.at(-1)?.id ?? '';
}

/** Logs the counts of a sampling, one animal after the other. */
export function countAll(
  barn: TestBarn,
  testId: string,
  stage: 'before' | 'after',
  counts: Readonly<Record<string, number>>,
  method = FIFTY,
): void {
  for (const [animalId, eggs] of Object.entries(counts)) {
    const answer = barn.send({
      type: 'log-egg-count',
      animalIds: [animalId],
      eggs,
      method,
      takenOn: null,
      why: { for: 'test', testId, stage },
    });
    if (!answer.ok) throw new Error(answer.message);
  }
}

/** Names each of some animals with a number of a list. */
export function each(ids: readonly string[], counts: readonly number[]): Record<string, number> {
  return Object.fromEntries(ids.map((id, i) => [id, counts[i] ?? 0]));
}

/** A test of levamisole in as many goats as counts are given, with both samplings counted, ten days apart. */
export function wholeTest(
  before: readonly number[],
  after: readonly number[],
): { barn: TestBarn; testId: string } {
  const { barn, ids } = barnWithGoats(before.length);
  for (const id of ids) dose(barn, id);
  const testId = plan(barn, ids);
  countAll(barn, testId, 'before', each(ids, before));
  barn.clock.pass(10 * DAY_MS);
  countAll(barn, testId, 'after', each(ids, after));
  return { barn, testId };
}

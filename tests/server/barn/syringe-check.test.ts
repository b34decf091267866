import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { grams } from '../../../core/quantity/mass.ts';
import { TreatmentRecord } from '../../../server/store/treatment-record.ts';
import { bringToOffer, standingOffer, type TestBarn, testBarn } from '../make/test-barn.ts';

const START = { type: 'syringe-check-start', syringeId: 'syringe-6-by-0.1', markMl: 3, celsius: 20 } as const;
const NEXT = { type: 'syringe-check-next' } as const;

/** Puts this many grams on the bench and lets it come to rest. */
function bench(barn: TestBarn, onIt: number, division = 0.01): void {
  for (let passed = 0; passed < 1500; passed += 100) {
    barn.clock.pass(100);
    barn.barn.read({
      role: 'bench',
      mass: grams(onIt),
      division: grams(division),
      stability: 'stable',
      net: false,
      zero: onIt === 0,
      at: barn.clock.uptimeMs,
    });
  }
}

/** Weighs ten deliveries of so many grams each. */
function deliverTen(barn: TestBarn, each: number): void {
  bench(barn, 55);
  expect(barn.send(START).ok).toBe(true);
  for (let done = 0; done <= 10; done += 1) {
    bench(barn, 55 + done * each);
    expect(barn.send(NEXT).ok).toBe(true);
  }
}

/** The syringe the dose of this visit is planned with, on offer or held up by a caution. */
function plannedWith(barn: TestBarn) {
  const { phase } = barn.barn.context.memory.round;
  const dose = phase.step === 'cautions' ? phase.decision.dose : standingOffer(barn).dose;
  return dose?.plan.syringe;
}

function measuredIn(barn: TestBarn) {
  return plannedWith(barn)?.measured;
}

test('ten deliveries are on disk after a restart, and their figures are the plan’s', () => {
  const path = join(mkdtempSync(join(tmpdir(), 'syringe-')), 'test.sqlite');
  const first = testBarn(path);
  bringToOffer(first);
  expect(measuredIn(first)).toBeNull();
  const before = standingOffer(first).dose.plan.relative;
  first.send({ type: 'skip', reason: 'later' });
  // 2.99147 g of water at 20 °C are 3 mL, so 2.9 g are 2.9083 mL: 0.0917 mL too little.
  deliverTen(first, 2.9);
  first.store.close();

  const second = testBarn(path);
  const [record, ...more] = second.barn.context.memory.syringeChecks;
  expect(more).toEqual([]);
  expect(record).toMatchObject({ syringeId: 'syringe-6-by-0.1', by: 'Wren', leftOut: 0 });
  expect(record?.delivered).toHaveLength(10);
  bringToOffer(second);
  expect(measuredIn(second)?.bias.value).toBeCloseTo(-0.0917, 3);
  expect(standingOffer(second).dose.plan.relative).not.toBe(before);
});

test('the latest check of a syringe counts, and another syringe has none from it', () => {
  const barn = testBarn();
  deliverTen(barn, 2.8);
  barn.send(NEXT);
  deliverTen(barn, 2.99);
  expect(barn.store.syringeChecks.latest()).toHaveLength(1);
  bringToOffer(barn);
  expect(measuredIn(barn)?.bias.value).toBeCloseTo(-0.0015, 3);
  barn.send({ type: 'set-syringes', syringeIds: ['syringe-12-by-0.2'] });
  expect(plannedWith(barn)).toMatchObject({ id: 'syringe-12-by-0.2', measured: null });
});

test('a check that ends while a dose is on offer ends the offer, since its error was another', () => {
  const barn = testBarn();
  const offerId = bringToOffer(barn);
  deliverTen(barn, 2.99);
  expect(barn.barn.context.memory.round.unanswered.map(({ id }) => id)).toEqual([offerId]);
  expect(barn.barn.context.memory.round.phase.step).toBe('cautions');
  expect(measuredIn(barn)).not.toBeNull();
});

test('a bench too coarse for the volume is refused, and the answer says which steps would do', () => {
  const barn = testBarn();
  bench(barn, 55, 1);
  const answer = barn.send(START);
  expect(answer).toMatchObject({ ok: false, code: 'too-coarse-for-syringe' });
  expect(answer.ok ? '' : answer.message).toContain('steps of 0.05 g or finer would do');
  expect(barn.barn.context.memory.syringeCheck).toEqual({ step: 'idle' });
});

test('deliveries before the bench went away are not joined to those after it', () => {
  const barn = testBarn();
  bench(barn, 55);
  barn.send(START);
  barn.send(NEXT);
  bench(barn, 58);
  barn.send(NEXT);
  barn.links.bench = 'lost';
  barn.barn.linkChanged('bench', false);
  expect(barn.barn.context.memory.syringeCheck.step).toBe('cup');
  expect(barn.send(NEXT)).toMatchObject({ code: 'bench-not-ready' });
});

test('a check taken back counts no more, here or after a restart, and stays on record with who took it back', () => {
  const path = join(mkdtempSync(join(tmpdir(), 'syringe-')), 'test.sqlite');
  const first = testBarn(path);
  expect(first.send({ type: 'syringe-check-forget', syringeId: 'syringe-6-by-0.1' })).toMatchObject({
    code: 'not-checked',
  });
  deliverTen(first, 2.8);
  first.send(NEXT);
  deliverTen(first, 2.9);
  first.send(NEXT);
  expect(first.send({ type: 'syringe-check-forget', syringeId: 'syringe-6-by-0.1' }).ok).toBe(true);
  bringToOffer(first);
  // Back to the catalogue, and not to the check before the one taken back.
  expect(measuredIn(first)).toBeNull();
  expect(first.send({ type: 'syringe-check-forget', syringeId: 'syringe-6-by-0.1' }).ok).toBe(false);
  first.store.close();

  const second = testBarn(path);
  expect(second.barn.context.memory.syringeChecks).toEqual([]);
  const kept = second.store.syringeChecks.all();
  expect(kept.map(({ forgotten }) => forgotten?.by ?? null)).toEqual(['Wren', null]);
  expect(kept[0]?.check.delivered[0]?.value).toBeCloseTo(2.9, 9);
  deliverTen(second, 2.99);
  expect(second.barn.context.memory.syringeChecks).toHaveLength(1);
});

test('a row of the day book from before syringes were checked still reads, as never measured', () => {
  const barn = testBarn();
  bringToOffer(barn);
  barn.send({ type: 'give', offerId: standingOffer(barn).id, outcome: 'whole' });
  const [entry] = barn.store.dayBook.newest(1);
  const old = JSON.parse(JSON.stringify(entry?.treatment));
  delete old.offer.dose.plan.syringe.measured;
  expect(TreatmentRecord.parse(old).offer.dose.plan.syringe.measured).toBeNull();
  expect(TreatmentRecord.safeParse({ ...old, offer: null }).success).toBe(false);
});

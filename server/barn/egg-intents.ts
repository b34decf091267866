import { calendarStart } from '../../core/dosing/local-time.ts';
import { DAY_MS, HOUR_MS } from '../../core/moment.ts';
import { samplesAt } from '../../core/reduction/reduction-test.ts';
import { factorOf } from '../../core/worms/counting-methods.ts';
import { countNow, type EggRecord } from '../../core/worms/egg-record.ts';
import type { Intent, Refusal } from '../../shared/intent.ts';
import type { BarnContext } from './barn-context.ts';
import { keep } from './shed-intents.ts';
import { changeWormCheck } from './test-intents.ts';

type Of<T extends Intent['type']> = Extract<Intent, { type: T }>;

/** Logs one sample of eggs counted. */
export function logEggCount(barn: BarnContext, intent: Of<'log-egg-count'>): Refusal | null {
  const { memory, store } = barn;
  const animalIds = [...new Set(intent.animalIds)];
  const herd = [...memory.animals, ...memory.gone];
  if (animalIds.some((id) => !herd.some((animal) => animal.id === id))) return 'no-such-animal';
  const takenAtMs = takenAt(barn, intent.takenOn);
  if (takenAtMs === null) return 'day-in-future';
  const refused = intent.why.for === 'test' ? whyNotInTest(barn, intent, intent.why, animalIds) : null;
  if (refused !== null) return refused;
  const { why } = intent;
  const record: EggRecord = {
    id: barn.newId(),
    animalIds,
    eggs: intent.eggs,
    method: intent.method,
    purpose: why.for === 'test' ? 'test' : why.purpose,
    test: why.for === 'test' ? { id: why.testId, stage: why.stage } : null,
    takenAtMs,
    loggedAtMs: Math.round(barn.clock.now().wallMs),
    by: memory.settings.person,
  };
  store.eggCounts.add(record);
  return changeWormCheck(barn, { eggCounts: [...memory.eggCounts, { record, corrections: [] }] });
}

/** Writes a correction beside a count; one taken back takes none. */
export function correctEggCount(barn: BarnContext, intent: Of<'correct-egg-count'>): Refusal | null {
  const { memory, store } = barn;
  const entry = memory.eggCounts.find(({ record }) => record.id === intent.countId);
  if (entry === undefined) return 'no-such-count';
  if (countNow(entry) === null) return 'already-corrected';
  const correction = {
    id: barn.newId(),
    countId: intent.countId,
    what: intent.what,
    atMs: Math.round(barn.clock.now().wallMs),
    by: memory.settings.person,
  };
  store.eggCounts.correct(correction);
  const corrected = { ...entry, corrections: [...entry.corrections, correction] };
  return changeWormCheck(barn, {
    eggCounts: memory.eggCounts.map((each) => (each === entry ? corrected : each)),
  });
}

/** Keeps a mean a person entered over that of the counts; `null` takes it back. */
export function setEggMean(barn: BarnContext, eggsPerGram: number | null): null {
  keep(barn, 'eggsPerGram', eggsPerGram);
  return changeWormCheck(barn, {});
}

/** Noon of a day on the farm, or now where it is today; `null` for a day to come. */
function takenAt({ clock, config }: BarnContext, on: string | null): number | null {
  const now = Math.round(clock.now().wallMs);
  if (on === null) return now;
  const [year = 0, month = 0, day = 0] = on.split('-').map(Number);
  const begins = calendarStart(year, month, day, config.timeZone);
  if (begins > now) return null;
  return now < begins + DAY_MS ? now : begins + 12 * HOUR_MS;
}

/** A count of a test must be of one animal of it, at a sampling it has, once, and by the method of its fellows. */
function whyNotInTest(
  { memory }: BarnContext,
  { method }: Of<'log-egg-count'>,
  { testId, stage }: Extract<Of<'log-egg-count'>['why'], { for: 'test' }>,
  animalIds: readonly string[],
): Refusal | null {
  const test = memory.reductionTests.find(({ id }) => id === testId);
  if (test === undefined) return 'no-such-test';
  if (test.end !== null) return 'test-ended';
  const [animalId, ...others] = animalIds;
  if (others.length > 0) return 'one-animal-a-sample';
  if (!samplesAt(test, stage) || !test.animals.some((animal) => animal.animalId === animalId))
    return 'not-in-test';
  const fellows = memory.eggCounts.filter(
    (entry) =>
      entry.record.test?.id === testId && entry.record.test.stage === stage && countNow(entry) !== null,
  );
  if (fellows.some(({ record }) => record.animalIds.includes(animalId ?? ''))) return 'already-counted';
  return fellows.some(({ record }) => factorOf(record.method) !== factorOf(method)) ? 'other-factor' : null;
}

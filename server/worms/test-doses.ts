import type { ScaleCheckRecord } from '../../core/checking/check-record.ts';
import { medicineById } from '../../core/medicine/formulary.ts';
import { DAY_MS } from '../../core/moment.ts';
import type { TestDose } from '../../core/reduction/confounders.ts';
import { type DayBookEntry, effectOf } from '../../core/round/day-book.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import type { TestNow } from './tests-now.ts';

/** How each treated animal of a test was dosed, as the day book and the checks of the platform tell it. */
export function testDoses(barn: BarnContext, { test, samples, days }: TestNow): TestDose[] {
  const { memory, store } = barn;
  const checks = store.scaleChecks.all().filter(({ role }) => role === 'platform');
  return samples.flatMap(({ animalId, treatmentId, before, after }) => {
    const entry = store.dayBook.entry(treatmentId ?? '');
    if (entry === undefined) return [];
    const { treatment } = entry;
    const { offer, givenAtMs } = treatment;
    const effect = effectOf(entry);
    const planned = offer.dose.plan.total.value;
    const delivered = (offer.dose.delivered.value * effect.volumeMl) / planned;
    const sampledAtMs = after?.takenAtMs ?? days.bestMs;
    return [
      {
        outcome: effect.animalId === animalId ? treatment.outcome : 'spat-out',
        share: effect.animalId === animalId ? delivered / offer.regimen.target.value : 0,
        strengthDoubt: offer.jug.relative,
        weightFromScale: !entry.corrections.some(({ what }) => what.kind === 'wrong-animal'),
        byGroup: offer.group !== null,
        scale: standingThen(checks, givenAtMs, memory.settings.scaleCheckDays),
        syringeChecked: offer.dose.plan.syringe.measured != null,
        otherMedicine: hadOther(barn, animalId, test.medicineId, before?.takenAtMs ?? givenAtMs, sampledAtMs),
        givenAtMs,
        sampledAtMs,
      },
    ];
  });
}

/** How the platform stood at a time by the checks before it, newest first; `days` is how long a pass is good for. */
function standingThen(
  checks: readonly Pick<ScaleCheckRecord, 'atMs' | 'verdict'>[],
  atMs: number,
  days: number,
): TestDose['scale'] {
  const last = checks.find((check) => check.atMs <= atMs);
  if (last === undefined) return 'unchecked';
  if (last.verdict === 'failed') return 'failed';
  return atMs - last.atMs <= days * DAY_MS ? 'passed' : 'unchecked';
}

/** So many doses of one animal are looked at, the first after its first sample. */
const MOST_DOSES = 500;

/** Whether an animal had another medicine against worms between two times; vitamins and the like are none. */
function hadOther(
  { memory, store }: BarnContext,
  animalId: string,
  medicineId: string,
  fromMs: number,
  toMs: number,
): boolean {
  const isOther = ({ treatment }: DayBookEntry): boolean => {
    const other = treatment.offer.jug.medicineId;
    return other !== medicineId && medicineById(memory.formulary, other)?.group !== 'vitamin';
  };
  const since = { animalId, fromMs: fromMs - DAY_MS, kind: 'treatment' } as const;
  return store.dayBook
    .pageAfter(since, null, MOST_DOSES)
    .some(
      (line) =>
        line.kind === 'treatment' &&
        effectOf(line.entry).animalId === animalId &&
        isOther(line.entry) &&
        line.entry.treatment.givenAtMs >= fromMs - DAY_MS &&
        line.entry.treatment.givenAtMs <= toMs,
    );
}

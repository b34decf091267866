import { medicineById, sameActive } from '../medicine/formulary.ts';
import type { RegimenInForce } from '../medicine/in-force.ts';
import { type BoardTime, DAY_MS, HOUR_MS } from '../moment.ts';
import type { ActiveAmount } from '../quantity/strength.ts';
import type { Caution, CautionCode, CautionInput, CautionStrength } from './cautions.ts';

/** What stayed in the syringe when an animal took only a part. */
export interface Rest {
  readonly regimenId: string;
  readonly active: ActiveAmount;
}

/** An earlier dose as the cautions see it. */
export interface EarlierDose {
  readonly animalId: string;
  readonly medicineId: string;
  /** Milliseconds since 1970. */
  readonly givenAtMs: number;
  /** Whether the clock was trusted when it was given; if not, its date says nothing. */
  readonly clockTrusted: boolean;
  /** The board's running time then; `null` where it is not known. */
  readonly board?: BoardTime | null;
  /** `null` where the whole dose went in, or nobody knows how much did. */
  readonly rest: Rest | null;
}

/** A second dose inside this many hours is never offered, unless the rule itself is for several a day. */
const SAME_DAY_HOURS = 24;

function caution(code: CautionCode, strength: CautionStrength, values: Caution['values'] = {}): Caution {
  return { code, strength, values };
}

/** How long a further dose of the same active is a stop: a day, or the rule's own wait where that is shorter. */
export function stopMs(regimen: Pick<RegimenInForce, 'repeatAfterDays'> | null): number {
  const day = SAME_DAY_HOURS * HOUR_MS;
  return regimen === null ? day : Math.min(day, regimen.repeatAfterDays.value * DAY_MS);
}

/** Two clocks that differ by less say the same (our own guard). */
const AGREE_MS = 60_000;

/**
 * When a dose was given by the clock of now, and how long ago that is; `null` where neither clock knows.
 *
 * Within one start of the board its running time is believed before the wall clock, which may have been set since.
 */
export function givenBy(
  dose: Pick<EarlierDose, 'givenAtMs' | 'clockTrusted' | 'board'>,
  { wallMs, board, clockTrusted }: Pick<CautionInput, 'wallMs' | 'board' | 'clockTrusted'>,
): { readonly atMs: number; readonly ageMs: number } | null {
  // A clock set back must not make yesterday's dose look like tomorrow's and so harmless.
  const byDate = { atMs: dose.givenAtMs, ageMs: Math.max(0, wallMs - dose.givenAtMs) };
  if (dose.board != null && dose.board.start === board?.start) {
    const ageMs = Math.max(0, board.sinceMs - dose.board.sinceMs);
    const agree = Math.abs(wallMs - dose.givenAtMs - ageMs) < AGREE_MS;
    return agree ? byDate : { atMs: wallMs - ageMs, ageMs };
  }
  return clockTrusted && dose.clockTrusted ? byDate : null;
}

type RestInput = Pick<
  CautionInput,
  'formulary' | 'jug' | 'regimen' | 'earlier' | 'wallMs' | 'board' | 'clockTrusted'
>;

/**
 * The rest of a dose that may be topped up now; `null` where a further dose is a new one.
 *
 * Only where the rule allows it, the newest dose of the active followed the same rule and left a known rest, and it is
 * recent enough that a new dose would be a stop. `earlier` is of one animal.
 */
export function restDue(input: RestInput): Rest | null {
  const { formulary, jug, regimen, earlier } = input;
  if (regimen === null || !regimen.topUp) return null;
  const last = earlier.findLast((dose) => sameActive(formulary, dose.medicineId, jug.medicineId));
  if (last === undefined || last.rest === null) return null;
  if (last.rest.regimenId !== regimen.id || last.rest.active.value <= 0) return null;
  const given = givenBy(last, input);
  return given !== null && given.ageMs < stopMs(regimen) ? last.rest : null;
}

/** What the day book says of this active: given too lately, or the rest of a part is still due. */
export function repeatCautions(input: CautionInput): Caution[] {
  const { jug, formulary, regimen, earlier, rest, visit, clockTrusted } = input;
  const found: Caution[] = [];
  if (visit.unanswered) found.push(caution('unanswered-offer', 'stop'));
  const same = earlier.filter((dose) => sameActive(formulary, dose.medicineId, jug.medicineId));
  const dates = same.flatMap((dose) => givenBy(dose, input) ?? []);
  const newest = dates.toSorted((a, b) => a.ageMs - b.ageMs || b.atMs - a.atMs)[0];
  // In the order given: what a later, trusted date stands behind is known to be old.
  const undated = same.at(-1)?.clockTrusted === false;
  if (!clockTrusted || !jug.clockTrusted || undated) {
    const dated = same.filter((dose) => dose.clockTrusted).map((dose) => dose.givenAtMs);
    const shown = newest?.atMs ?? Math.max(...dated);
    const known = Number.isFinite(shown) ? { lastGivenAtMs: shown } : {};
    found.push(caution('clock-untrusted', 'ask', { mixedAtMs: jug.mixedAtMs, ...known }));
  }
  if (newest === undefined) return found;
  const { atMs: last, ageMs } = newest;
  if (rest !== null) return [...found, caution('top-up', 'ask', { lastGivenAtMs: last })];
  const repeatDays = regimen?.repeatAfterDays.value ?? 0;
  const waitMs = stopMs(regimen);
  if (ageMs < waitMs) {
    const values = { lastGivenAtMs: last, repeatDays, nextAtMs: last + waitMs };
    found.push(caution('same-active-today', 'stop', values));
  } else if (ageMs < repeatDays * DAY_MS) {
    found.push(caution('repeat-too-soon', 'ask', { lastGivenAtMs: last, repeatDays }));
  }
  return found;
}

/**
 * A dose, within the rule's wait, of a medicine that nobody here knows: another kiosk's own, or a later program's. It may
 * hold the same active; a date that is not known counts as within the wait.
 */
export function unknownMedicineCautions(input: CautionInput): Caution[] {
  const { formulary, regimen, earlier } = input;
  const waitMs = Math.max(stopMs(regimen), (regimen?.repeatAfterDays.value ?? 0) * DAY_MS);
  const last = earlier
    .filter((dose) => medicineById(formulary, dose.medicineId) === undefined)
    .findLast((dose) => (givenBy(dose, input)?.ageMs ?? 0) < waitMs);
  return last === undefined
    ? []
    : [caution('unknown-medicine-given', 'ask', { lastGivenAtMs: last.givenAtMs })];
}

/** What may not have been given within days of this medicine: a stop where the day book holds it. */
export function conflictCautions(input: CautionInput): Caution[] {
  const { jug, formulary, earlier } = input;
  const conflicts = medicineById(formulary, jug.medicineId)?.conflicts ?? [];
  return conflicts.flatMap(({ group, days }) => {
    // A dose whose date is not known counts as within them.
    const last = earlier
      .filter((dose) => medicineById(formulary, dose.medicineId)?.group === group)
      .findLast((dose) => (givenBy(dose, input)?.ageMs ?? 0) < days.value * DAY_MS);
    return last === undefined
      ? []
      : [caution('conflict-given', 'stop', { days: days.value, lastGivenAtMs: last.givenAtMs })];
  });
}

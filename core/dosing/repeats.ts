import { medicineById, sameActive } from '../medicine/formulary.ts';
import type { RegimenInForce } from '../medicine/in-force.ts';
import { DAY_MS, HOUR_MS } from '../moment.ts';
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

type RestInput = Pick<CautionInput, 'formulary' | 'jug' | 'regimen' | 'earlier' | 'wallMs' | 'clockTrusted'>;

/**
 * The rest of a dose that may be topped up now; `null` where a further dose is a new one.
 *
 * Only where the rule allows it, the newest dose of the active followed the same rule and left a known rest, and it is
 * recent enough that a new dose would be a stop. `earlier` is of one animal.
 */
export function restDue(input: RestInput): Rest | null {
  const { formulary, jug, regimen, earlier, wallMs, clockTrusted } = input;
  if (regimen === null || !regimen.topUp || !clockTrusted) return null;
  const last = earlier.findLast((dose) => sameActive(formulary, dose.medicineId, jug.medicineId));
  if (last === undefined || last.rest === null || !last.clockTrusted) return null;
  if (last.rest.regimenId !== regimen.id || last.rest.active.value <= 0) return null;
  return Math.max(0, wallMs - last.givenAtMs) < stopMs(regimen) ? last.rest : null;
}

/** What the day book says of this active: given too lately, or the rest of a part is still due. */
export function repeatCautions(input: CautionInput): Caution[] {
  const { jug, formulary, regimen, earlier, rest, visit, wallMs, clockTrusted } = input;
  const found: Caution[] = [];
  if (visit.unanswered) found.push(caution('unanswered-offer', 'stop'));
  const same = earlier.filter((dose) => sameActive(formulary, dose.medicineId, jug.medicineId));
  const last = Math.max(...same.filter((dose) => dose.clockTrusted).map((dose) => dose.givenAtMs));
  // In the order given: what a later, trusted date stands behind is known to be old.
  const undated = same.at(-1)?.clockTrusted === false;
  if (!clockTrusted || !jug.clockTrusted || undated) {
    const known = Number.isFinite(last) ? { lastGivenAtMs: last } : {};
    found.push(caution('clock-untrusted', 'ask', { mixedAtMs: jug.mixedAtMs, ...known }));
  }
  if (!clockTrusted || !Number.isFinite(last)) return found;
  if (rest !== null) return [...found, caution('top-up', 'ask', { lastGivenAtMs: last })];
  // A clock set back must not make yesterday's dose look like tomorrow's and so harmless.
  const ageMs = Math.max(0, wallMs - last);
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

/** What may not have been given within days of this medicine: a stop where the day book holds it. */
export function conflictCautions(input: CautionInput): Caution[] {
  const { jug, formulary, earlier, wallMs, clockTrusted } = input;
  const conflicts = medicineById(formulary, jug.medicineId)?.conflicts ?? [];
  return conflicts.flatMap(({ group, days }) => {
    // A dose whose date is not known counts as within them.
    const last = earlier
      .filter((dose) => medicineById(formulary, dose.medicineId)?.group === group)
      .findLast(
        (dose) => !clockTrusted || !dose.clockTrusted || wallMs - dose.givenAtMs < days.value * DAY_MS,
      );
    return last === undefined
      ? []
      : [caution('conflict-given', 'stop', { days: days.value, lastGivenAtMs: last.givenAtMs })];
  });
}

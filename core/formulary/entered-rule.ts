import type { Figure } from '../medicine/figure.ts';
import type { Limits } from '../medicine/limits.ts';
import { perKilogram } from '../medicine/printed.ts';
import { Regimen } from '../medicine/regimen.ts';
import type { Withdrawal } from '../medicine/withdrawal.ts';
import { REPEAT_GUARD, VET_ONLY } from './common.ts';
import { type CannotKeep, type EnteredBy, enteredSource, keptAs } from './entered.ts';
import { NO_MEAT_SOURCE, NO_MILK_SOURCE } from './sources.ts';

/** How long a label or a veterinarian keeps meat or milk back. */
export type EnteredTime =
  | { readonly kind: 'hours'; readonly hours: number }
  | { readonly kind: 'days'; readonly days: number }
  | { readonly kind: 'not-for-people' }
  | { readonly kind: 'unknown' };

/** A rule as a label or a veterinarian gives it: what neither says is `null`. */
export interface EnteredRule {
  readonly species: Regimen['species'];
  readonly use: Regimen['use'];
  /** The one presentation it is for; `null` for all of the medicine. */
  readonly presentationId: string | null;
  readonly route: Regimen['route'];
  /** In mg/kg; `null` where only the other unit is printed. */
  readonly mgPerKg: number | null;
  readonly mgPerLb: number | null;
  /** In mg/kg. */
  readonly ceiling: number | null;
  /** In mg/kg. */
  readonly floor: number | null;
  readonly repeatDays: number | null;
  readonly meat: EnteredTime;
  readonly milk: EnteredTime;
  readonly minAgeDays: number | null;
  readonly minWeightKg: number | null;
  /** Days after mating in which it is not given, and days after the males left. */
  readonly pregnancy: { readonly afterBredDays: number; readonly afterMalesDays: number } | null;
  /** Which females are left out for their milk. */
  readonly milkers: 'all-may' | 'not-in-milk' | 'not-dairy';
}

/** The rule a person entered, under an id of its own, or why it cannot be kept. It still has to be approved. */
export function ruleFrom(entered: EnteredRule, id: string, who: EnteredBy): Regimen | CannotKeep {
  const source = enteredSource(who, entered.use === 'label' ? 'label' : 'veterinarian');
  const figure = (value: number): Figure => ({ value, evidence: 'entered', source });
  const maybe = (value: number | null): Figure | null => (value === null ? null : figure(value));
  const { mgPerKg, mgPerLb, pregnancy, milkers } = entered;
  const limits: Limits = {
    minAgeDays: maybe(entered.minAgeDays),
    minWeightKg: maybe(entered.minWeightKg),
    pregnancy:
      pregnancy === null
        ? null
        : {
            afterBredDays: figure(pregnancy.afterBredDays),
            afterMalesDays: figure(pregnancy.afterMalesDays),
          },
    notInMilk:
      milkers === 'not-in-milk'
        ? { why: 'Not for females giving milk for people', evidence: 'entered', source }
        : null,
    notDairy:
      milkers === 'not-dairy'
        ? { why: 'Not for dairy females of breeding age', evidence: 'entered', source }
        : null,
  };
  return keptAs(Regimen, {
    id,
    species: entered.species,
    use: entered.use,
    route: entered.route,
    purpose: null,
    presentationIds: entered.presentationId === null ? null : [entered.presentationId],
    target: {
      ...figure(mgPerKg ?? perKilogram(mgPerLb ?? 0)),
      ...(mgPerLb === null ? {} : { printedMgPerLb: mgPerLb }),
    },
    ceiling: maybe(entered.ceiling),
    floor: maybe(entered.floor),
    repeatAfterDays: entered.repeatDays === null ? REPEAT_GUARD : figure(entered.repeatDays),
    topUp: false,
    limits,
    meat: withdrawalFrom(entered.meat, source, NO_MEAT_SOURCE),
    milk: withdrawalFrom(entered.milk, source, NO_MILK_SOURCE),
    printed: [],
    notes: entered.use === 'label' ? [] : [VET_ONLY],
  });
}

function withdrawalFrom(time: EnteredTime, source: string, ifUnknown: string): Withdrawal {
  switch (time.kind) {
    case 'hours':
    case 'days':
      return { ...time, evidence: 'entered', source };
    case 'not-for-people':
      return { kind: 'not-for-people', source };
    case 'unknown':
      return { kind: 'unknown', source: ifUnknown };
  }
}

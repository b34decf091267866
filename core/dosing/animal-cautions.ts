import type { Animal } from '../herd/animal.ts';
import { GESTATION } from '../herd/gestation.ts';
import type { Limits } from '../medicine/limits.ts';
import { DAY_MS } from '../moment.ts';
import type { Held } from '../weighing/settle.ts';
import type { Caution, CautionCode, CautionStrength } from './cautions.ts';

/** What the limits of a rule are held against. */
export interface LimitInput {
  readonly animal: Animal;
  readonly weight: Held;
  /** Milliseconds since 1970. */
  readonly wallMs: number;
  readonly clockTrusted: boolean;
}

function caution(code: CautionCode, strength: CautionStrength, values: Caution['values'] = {}): Caution {
  return { code, strength, values };
}

/** Whether the animal is one the rule leaves out: too young, too light, newly bred, giving milk. */
export function limitCautions(limits: Limits, input: LimitInput): Caution[] {
  return [
    ...ageCautions(limits, input),
    ...lightCautions(limits, input),
    ...breedingCautions(limits, input),
    ...milkGiverCautions(limits, input),
  ];
}

/** Days since an instant, or `null` where it or today is not known; one that lies ahead is today. */
function daysSince(atMs: number | null, { wallMs, clockTrusted }: LimitInput): number | null {
  return atMs === null || !clockTrusted ? null : Math.max(0, wallMs - atMs) / DAY_MS;
}

function ageCautions({ minAgeDays }: Limits, input: LimitInput): Caution[] {
  if (minAgeDays === null) return [];
  const days = daysSince(input.animal.bornAtMs, input);
  if (days !== null)
    return days < minAgeDays.value ? [caution('too-young', 'stop', { days, least: minAgeDays.value })] : [];
  // A grown animal needs no birthday.
  return input.animal.class === 'young' ? [caution('age-unknown', 'ask', { least: minAgeDays.value })] : [];
}

/** A weight that may be too light by its doubt at k = 2 is asked about, one that is by itself stops. */
function lightCautions({ minWeightKg }: Limits, { weight }: LimitInput): Caution[] {
  if (minWeightKg === null) return [];
  const grams = weight.mass.value;
  const values = { grams, leastGrams: 1000 * minWeightKg.value };
  if (grams < values.leastGrams) return [caution('too-light', 'stop', values)];
  return grams - 2 * weight.uncertainty.value < values.leastGrams
    ? [caution('too-light', 'ask', values)]
    : [];
}

function breedingCautions({ pregnancy }: Limits, input: LimitInput): Caution[] {
  const { animal } = input;
  if (pregnancy === null || animal.class !== 'female') return [];
  const bred = daysSince(animal.bredAtMs, input);
  const males = daysSince(animal.malesRemovedAtMs, input);
  if (bred !== null && bred < pregnancy.afterBredDays.value)
    return [
      caution('early-pregnancy', 'stop', {
        bredAtMs: animal.bredAtMs ?? 0,
        days: pregnancy.afterBredDays.value,
      }),
    ];
  if (males !== null && males < pregnancy.afterMalesDays.value)
    return [
      caution('early-pregnancy', 'stop', {
        malesAtMs: animal.malesRemovedAtMs ?? 0,
        days: pregnancy.afterMalesDays.value,
      }),
    ];
  const inCalf = bred !== null && bred <= GESTATION[animal.species].longest;
  return inCalf || males !== null
    ? []
    : [caution('breeding-unknown', 'ask', { days: pregnancy.afterBredDays.value })];
}

function milkGiverCautions({ notInMilk, notDairy }: Limits, { animal }: LimitInput): Caution[] {
  if (animal.inMilk && (notInMilk !== null || notDairy !== null)) return [caution('not-in-milk', 'stop')];
  return notDairy !== null && animal.class === 'female' ? [caution('not-for-dairy', 'note')] : [];
}

import { massFrom } from '../quantity/mass.ts';
import { millilitres, usFluidOunces, usGallons, usQuarts } from '../quantity/volume.ts';

/** The volumes a packet may name in words, in mL. */
const NAMED = {
  mL: (amount: number) => millilitres(amount).value,
  L: (amount: number) => millilitres(1000 * amount).value,
  'US quart': (amount: number) => usQuarts(amount).value,
  'US gallon': (amount: number) => usGallons(amount).value,
  'US fl oz': (amount: number) => usFluidOunces(amount).value,
} as const;
/** A volume as a packet names it. */
export interface NamedVolume {
  readonly amount: number;
  readonly unit: keyof typeof NAMED;
}

/** The volume named in words, in mL. */
export function namedMl({ amount, unit }: NamedVolume): number {
  return NAMED[unit](amount);
}

/** A dose as a label prints it: a volume of one presentation for a body weight. */
export interface PrintedDose {
  readonly presentationId: string;
  readonly ml: number;
  readonly per: number;
  readonly unit: 'kg' | 'lb';
}

/** A rounded figure may be off by this share before it contradicts the exact one. */
const ROUNDED = 0.03;
/** A percentage and a strength in mg/mL are one figure twice: no more than the last digit may differ. */
const PERCENT_ROUNDED = 0.005;
/** A table is rounded to the marks of a syringe: one that was read runs 5.8 % high at its lowest weight. */
const TABLE_ROUNDED = 0.06;
/** A volume named in words is exact: 943 mL is no quart. */
const VOLUME_ROUNDED = 0.002;

function agree(printed: number, exact: number, share: number): boolean {
  return Math.abs(printed - exact) <= share * Math.abs(exact);
}

/** A rate in mg/lb as one in mg/kg. */
export function perKilogram(mgPerLb: number): number {
  return (mgPerLb * massFrom(1, 'kg').value) / massFrom(1, 'lb').value;
}

/** Whether a rate printed in mg/lb is the one in mg/kg, but for its rounding. */
export function sameRate(mgPerKg: number, mgPerLb: number): boolean {
  return agree(mgPerLb, mgPerKg / perKilogram(1), ROUNDED);
}

/** Whether a percentage, grams in 100 mL, is the strength in mg/mL. */
export function samePercent(mgPerMl: number, percent: number): boolean {
  return agree(10 * percent, mgPerMl, PERCENT_ROUNDED);
}

/** Whether a volume in mL is the one named in words. */
export function sameVolume(ml: number, named: NamedVolume): boolean {
  return agree(ml, namedMl(named), VOLUME_ROUNDED);
}

/** Whether the strength printed for a mix is what its grams of active and its volume come to. */
export function sameMix(activeGrams: number, ml: number, mgPerMl: number): boolean {
  return agree(mgPerMl, (1000 * activeGrams) / ml, ROUNDED);
}

/** Whether a volume printed for a weight is what the rate and the strength come to. */
export function sameDose({ ml, per, unit }: PrintedDose, mgPerMl: number, mgPerKg: number): boolean {
  const kg = massFrom(per, unit).value / 1000;
  return agree(ml, (mgPerKg * kg) / mgPerMl, TABLE_ROUNDED);
}

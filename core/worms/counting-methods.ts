import { grams } from '../quantity/mass.ts';
import { millilitres } from '../quantity/volume.ts';
import { type CountingMethod, eggFactor } from './egg-factor.ts';

/** How a sample was made countable: a slide whose figures are known, or only the factor a laboratory told. */
export type SampleMethod =
  | {
      readonly kind: 'slide';
      readonly dungGrams: number;
      readonly suspensionMl: number;
      readonly countedMl: number;
    }
  | { readonly kind: 'told'; readonly factor: number };

/** The slide of a method as `eggFactor` takes it. */
export function slideOf(method: Extract<SampleMethod, { kind: 'slide' }>): CountingMethod {
  const { dungGrams, suspensionMl, countedMl } = method;
  return {
    name: methodWords(method),
    dung: grams(dungGrams),
    suspension: millilitres(suspensionMl),
    counted: millilitres(countedMl),
  };
}

/** Eggs per gram for each egg seen, exact; throws `RangeError` for a slide that cannot be, as `eggFactor` does. */
export function factorOf(method: SampleMethod): number {
  return method.kind === 'told' ? method.factor : eggFactor(slideOf(method));
}

/** The method in plain words, as it is written beside a count. */
export function methodWords(method: SampleMethod): string {
  if (method.kind === 'told') return `factor ${method.factor} as told`;
  return `${method.dungGrams} g in ${method.suspensionMl} mL, ${method.countedMl} mL counted`;
}

/**
 * The slides most often used, the finest last: dung, suspension, volume under the marked fields.
 *
 * whitlock.com.au, chamber calculation page; what it prints for 33.3 and 16.7 is rounded, here it is not.
 */
export const COMMON_METHODS: readonly Extract<SampleMethod, { kind: 'slide' }>[] = [
  { kind: 'slide', dungGrams: 2, suspensionMl: 60, countedMl: 0.3 },
  { kind: 'slide', dungGrams: 2, suspensionMl: 60, countedMl: 0.6 },
  { kind: 'slide', dungGrams: 4, suspensionMl: 60, countedMl: 0.3 },
  { kind: 'slide', dungGrams: 2, suspensionMl: 60, countedMl: 0.9 },
  { kind: 'slide', dungGrams: 4, suspensionMl: 60, countedMl: 0.6 },
  { kind: 'slide', dungGrams: 4, suspensionMl: 60, countedMl: 0.9 },
];

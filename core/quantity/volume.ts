import { type Quantity, quantity } from './quantity.ts';

/** A volume in millilitres. */
export type Volume = Quantity<'mL'>;

/** Millilitres in a US gallon of 231 cubic inches (exact); quart, cup and fluid ounce are parts of it. */
const ML_PER_US_GALLON = 231 * 2.54 ** 3;

/** A volume in millilitres. */
export function millilitres(value: number): Volume {
  return quantity('mL', value);
}

/** A volume given in US gallons: 3,785.411784 mL each, exact. */
export function usGallons(value: number): Volume {
  return quantity('mL', value * ML_PER_US_GALLON);
}

/** A volume given in US liquid quarts: 946.352946 mL each, exact. */
export function usQuarts(value: number): Volume {
  return usGallons(value / 4);
}

/** A volume given in US customary cups: 236.5882365 mL each, exact. */
export function usCups(value: number): Volume {
  return usGallons(value / 16);
}

/** A volume given in US fluid ounces: 29.5735295625 mL each, exact. */
export function usFluidOunces(value: number): Volume {
  return usGallons(value / 128);
}

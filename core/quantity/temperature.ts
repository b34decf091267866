import { type Quantity, quantity } from './quantity.ts';

/** A temperature in degrees Celsius. */
export type Temperature = Quantity<'degC'>;

/** A temperature in degrees Celsius. */
export function celsius(value: number): Temperature {
  return quantity('degC', value);
}

/** A temperature given in degrees Fahrenheit. */
export function fahrenheit(value: number): Temperature {
  return quantity('degC', ((value - 32) * 5) / 9);
}

/**
 * A number that carries its unit in its type, so that grams never meet millilitres by accident.
 *
 * `value` is a finite double in the unit named. Quantities are made by the checked constructors of this
 * folder and combined only through the functions below; rounding happens once, at display.
 */
export interface Quantity<U extends string> {
  readonly unit: U;
  readonly value: number;
}

/** Makes a quantity. Throws `RangeError` when the value is not finite. */
export function quantity<U extends string>(unit: U, value: number): Quantity<U> {
  if (!Number.isFinite(value)) throw new RangeError(`a quantity in ${unit} must be finite, not ${value}`);
  return { unit, value };
}

/** The sum of two quantities of one unit. */
export function add<U extends string>(a: Quantity<U>, b: Quantity<NoInfer<U>>): Quantity<U> {
  return quantity(a.unit, a.value + b.value);
}

/** The first quantity less the second. */
export function subtract<U extends string>(a: Quantity<U>, b: Quantity<NoInfer<U>>): Quantity<U> {
  return quantity(a.unit, a.value - b.value);
}

/** A quantity multiplied by a plain number. */
export function scale<U extends string>(a: Quantity<U>, factor: number): Quantity<U> {
  return quantity(a.unit, a.value * factor);
}

/** The plain number of times the second quantity goes into the first. Throws when the second is zero. */
export function ratio<U extends string>(a: Quantity<U>, b: Quantity<NoInfer<U>>): number {
  if (b.value === 0) throw new RangeError(`cannot divide by zero ${b.unit}`);
  return a.value / b.value;
}

/** The distance between two quantities of one unit, never negative. */
export function distance<U extends string>(a: Quantity<U>, b: Quantity<NoInfer<U>>): Quantity<U> {
  return quantity(a.unit, Math.abs(a.value - b.value));
}

import { type Mass, massIn } from './mass.ts';
import { type Quantity, quantity } from './quantity.ts';
import { millilitres, type Volume } from './volume.ts';

/** The strength of a liquid medicine: milligrams of active in a millilitre. */
export type Strength = Quantity<'mg/mL'>;

/** A dose rate: milligrams of active for each kilogram of animal. */
export type DoseRate = Quantity<'mg/kg'>;

/** An amount of active in milligrams. */
export type ActiveAmount = Quantity<'mg'>;

/** A strength in mg/mL. Throws `RangeError` unless it is above zero. */
export function mgPerMl(value: number): Strength {
  if (!(value > 0)) throw new RangeError(`a strength must be above zero, not ${value} mg/mL`);
  return quantity('mg/mL', value);
}

/** A dose rate in mg/kg. Throws `RangeError` unless it is above zero. */
export function mgPerKg(value: number): DoseRate {
  if (!(value > 0)) throw new RangeError(`a dose rate must be above zero, not ${value} mg/kg`);
  return quantity('mg/kg', value);
}

/** The strength of an active dissolved to a final volume. */
export function strengthOf(active: Mass, finalVolume: Volume): Strength {
  return mgPerMl((active.value * 1000) / finalVolume.value);
}

/** The active an animal of this mass needs at this rate. */
export function activeFor(animal: Mass, rate: DoseRate): ActiveAmount {
  return quantity('mg', massIn(animal, 'kg') * rate.value);
}

/** The active in a volume of this strength. */
export function activeIn(volume: Volume, strength: Strength): ActiveAmount {
  return quantity('mg', volume.value * strength.value);
}

/** The volume of a liquid that holds an amount of active. */
export function volumeHolding(active: ActiveAmount, strength: Strength): Volume {
  return millilitres(active.value / strength.value);
}

/** The rate an animal of this mass really receives from a volume of this strength. */
export function rateDelivered(volume: Volume, strength: Strength, animal: Mass): DoseRate {
  return mgPerKg((volume.value * strength.value) / massIn(animal, 'kg'));
}

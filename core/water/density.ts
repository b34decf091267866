import { grams, type Mass } from '../quantity/mass.ts';
import type { Temperature } from '../quantity/temperature.ts';
import { millilitres, type Volume } from '../quantity/volume.ts';

/** Density of air around the scale, kg/m3, the conventional value (OIML D 28, from memory). */
const AIR = 1.2;
/** Density of the masses a scale is adjusted with, kg/m3, the conventional value (OIML D 28, from memory). */
const ADJUSTMENT_MASSES = 8000;

/**
 * Density of air-free water at 101,325 Pa, in kg/m3, for 0 to 40 degC (included).
 *
 * Tanaka et al., Metrologia 38 (2001) 301-309. Throws `RangeError` outside the range, where the formula is not given.
 */
export function waterDensity(temperature: Temperature): number {
  const t = temperature.value;
  if (t < 0 || t > 40) throw new RangeError(`water density is known from 0 to 40 degC, not at ${t}`);
  return 999.97495 * (1 - ((t - 3.983035) ** 2 * (t + 301.797)) / (522528.9 * (t + 69.34881)));
}

/** The true mass of a volume of water. */
export function waterMass(volume: Volume, temperature: Temperature): Mass {
  return grams((volume.value * waterDensity(temperature)) / 1000);
}

/** What a scale in air shows for a volume of water: the true mass less its buoyancy. */
export function waterReading(volume: Volume, temperature: Temperature): Mass {
  const density = waterDensity(temperature);
  return grams(waterMass(volume, temperature).value * ((1 - AIR / density) / (1 - AIR / ADJUSTMENT_MASSES)));
}

/** The volume of water behind what a scale in air shows; the inverse of {@link waterReading}. */
export function waterVolume(reading: Mass, temperature: Temperature): Volume {
  return millilitres(reading.value / waterReading(millilitres(1), temperature).value);
}

import { grams, kilograms } from '../../../core/quantity/mass.ts';
import type { Reading, ScaleSpec } from '../../../core/weighing/reading.ts';

/** A 200 kg platform in steps of 50 g. */
export const PLATFORM: ScaleSpec = { capacity: kilograms(200), division: grams(50) };

/** A 5 kg bench in steps of 1 g. */
export const BENCH: ScaleSpec = { capacity: kilograms(5), division: grams(1) };

/** A gross reading of the platform, in grams, at rest. */
export function makeReading(at: number, massGrams: number, over: Partial<Reading> = {}): Reading {
  return {
    role: 'platform',
    mass: grams(massGrams),
    division: grams(50),
    stability: 'stable',
    net: false,
    zero: Math.abs(massGrams) < 13,
    at,
    ...over,
  };
}

/** Readings of one load from a time on, at a rate in Hz, for a length of time, shown in the scale's steps. */
export function readings(
  fromMs: number,
  lengthMs: number,
  hz: number,
  load: (ms: number) => number,
  over: Partial<Reading> = {},
): Reading[] {
  const count = Math.round((lengthMs * hz) / 1000);
  return Array.from({ length: count }, (_, i) => {
    const ms = (i * 1000) / hz;
    return makeReading(fromMs + ms, Math.round(load(ms) / 50) * 50, over);
  });
}

import { kilograms, type Mass, massFrom } from '../quantity/mass.ts';
import type { ScaleRole } from '../weighing/reading.ts';

/** Something of known weight that a keeper has at hand, to show what a new scale makes of it. */
export interface KnownLoad {
  readonly id: string;
  readonly amount: number;
  /** `L` is a full bottle of so many litres of water, weighed with the bottle. */
  readonly unit: 'g' | 'kg' | 'lb' | 'L';
  readonly mass: Mass;
}

function load(amount: number, unit: 'g' | 'kg' | 'lb'): KnownLoad {
  return { id: `${unit}-${amount}`, amount, unit, mass: massFrom(amount, unit) };
}

/** Water of 1 L is 1 kg as near as a unit is told by; a thin bottle adds a few hundredths. */
const BOTTLE: KnownLoad = { id: 'L-1', amount: 1, unit: 'L', mass: kilograms(1) };

/**
 * What a keeper may put on a new scale: full bags, weights, a bottle of water.
 *
 * It tells a right unit and format from wrong ones; how exact the scale is, is another question.
 */
export const KNOWN_LOADS: Readonly<Record<ScaleRole, readonly KnownLoad[]>> = {
  platform: [load(5, 'kg'), load(10, 'kg'), load(20, 'kg'), load(25, 'kg'), load(25, 'lb'), load(50, 'lb')],
  bench: [load(100, 'g'), load(200, 'g'), load(500, 'g'), load(1, 'kg'), load(1, 'lb'), BOTTLE],
};

/** The load of an id for a scale in this role, or `undefined`. */
export function knownLoad(role: ScaleRole, id: string): KnownLoad | undefined {
  return KNOWN_LOADS[role].find((each) => each.id === id);
}

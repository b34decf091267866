import { grams, kilograms, type Mass, pounds } from '../quantity/mass.ts';
import { celsius } from '../quantity/temperature.ts';
import { millilitres } from '../quantity/volume.ts';
import { waterReading } from '../water/density.ts';
import type { ScaleRole } from '../weighing/reading.ts';

/** A weight a scale can be checked with, as the keeper names it. */
export interface KnownWeight {
  readonly id: string;
  readonly amount: number;
  /** `L` is a bottle that holds so many litres of water; the bottle itself is weighed first, empty. */
  readonly unit: 'g' | 'kg' | 'lb' | 'L';
  /** What a right scale shows for it, the bottle apart. */
  readonly mass: Mass;
  /** How far the weight itself may be off, either way. */
  readonly doubt: Mass;
}

/** A stamped weight of the plainest kind is within 1 part in 2,000: OIML R 111 class M3, from memory. */
const STAMPED = 0.0005;
/**
 * A bottle filled by hand to its litre is taken as within 1.5 %: the shortfall one prepacked bottle of this size may
 * have by Directive 76/211/EEC, from memory. Water of 15 to 25 degC adds 0.1 %, which is inside it.
 */
const FILLED = 0.015;
/** Room temperature, in degC. */
const ROOM = 20;

function stamped(amount: number, unit: 'g' | 'kg' | 'lb'): KnownWeight {
  const mass = unit === 'g' ? grams(amount) : unit === 'kg' ? kilograms(amount) : pounds(amount);
  return { id: `${unit}-${amount}`, amount, unit, mass, doubt: grams(STAMPED * mass.value) };
}

const LITRE = waterReading(millilitres(1000), celsius(ROOM));
const BOTTLE: KnownWeight = {
  id: 'water-1',
  amount: 1,
  unit: 'L',
  mass: LITRE,
  doubt: grams(FILLED * LITRE.value),
};

/** The weights to pick from for each scale: stamped weights keepers can borrow or buy, and a litre of water. */
export const KNOWN_WEIGHTS: Readonly<Record<ScaleRole, readonly KnownWeight[]>> = {
  platform: [
    stamped(5, 'kg'),
    stamped(10, 'kg'),
    stamped(20, 'kg'),
    BOTTLE,
    stamped(10, 'lb'),
    stamped(25, 'lb'),
    stamped(50, 'lb'),
  ],
  bench: [stamped(100, 'g'), stamped(200, 'g'), stamped(500, 'g'), stamped(1, 'kg'), BOTTLE],
};

/** The weight of an id that a scale of this role can be checked with, or `undefined`. */
export function knownWeight(role: ScaleRole, id: string): KnownWeight | undefined {
  return KNOWN_WEIGHTS[role].find((weight) => weight.id === id);
}

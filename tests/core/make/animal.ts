import type { Animal } from '../../../core/herd/animal.ts';
import { kilograms } from '../../../core/quantity/mass.ts';
import { hoursAgo } from './time.ts';

/** A grown doe of 40 kg, not in milk, unless told otherwise. */
export function makeAnimal(over: Partial<Animal> = {}): Animal {
  return {
    id: 'anna',
    name: 'Anna',
    species: 'goat',
    class: 'female',
    tag: '840003123456789',
    inMilk: false,
    bornAtMs: null,
    bredAtMs: null,
    malesRemovedAtMs: null,
    lastWeight: { mass: kilograms(40), atMs: hoursAgo(24 * 30) },
    ...over,
  };
}

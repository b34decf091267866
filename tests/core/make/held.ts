import { grams, kilograms } from '../../../core/quantity/mass.ts';
import type { Held } from '../../../core/weighing/settle.ts';
import { UP } from './time.ts';

/** A weight held just now, in kilograms, known to 50 g. */
export function makeHeld(kg = 40, over: Partial<Held> = {}): Held {
  return { mass: kilograms(kg), uncertainty: grams(50), at: UP, changedFrom: null, ...over };
}

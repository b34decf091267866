import type { HerdAnimal } from '../../../core/herd/herd-animal.ts';
import { makeAnimal } from './animal.ts';

/** Anna with nothing more known of her, unless told otherwise. */
export function makeHerdAnimal(over: Partial<HerdAnimal> = {}): HerdAnimal {
  return {
    ...makeAnimal(),
    visualTags: [],
    formerTags: [],
    pen: null,
    mark: null,
    photo: null,
    kiddedAtMs: null,
    inMilkSinceMs: null,
    life: { kind: 'present' },
    ...over,
  };
}

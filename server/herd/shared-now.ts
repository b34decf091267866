import type { HerdAnimal } from '../../core/herd/herd-animal.ts';
import { sharedNumbers } from '../../core/herd/numbers.ts';

const kept = new WeakMap<readonly HerdAnimal[], ReadonlyMap<string, readonly string[]>>();

/** By animal, the ids of the others that carry one of its numbers; worked out once for each state of the herd. */
export function sharedNow(animals: readonly HerdAnimal[]): ReadonlyMap<string, readonly string[]> {
  const known = kept.get(animals);
  if (known !== undefined) return known;
  const found = new Map<string, Set<string>>();
  for (const { animalIds } of sharedNumbers(animals)) {
    for (const id of animalIds) {
      const others = found.get(id) ?? new Set();
      for (const other of animalIds) if (other !== id) others.add(other);
      found.set(id, others);
    }
  }
  const shared = new Map([...found].map(([id, others]) => [id, [...others]]));
  kept.set(animals, shared);
  return shared;
}

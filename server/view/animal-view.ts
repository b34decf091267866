import type { Animal } from '../../core/herd/animal.ts';
import type { AnimalView } from '../../shared/animal.ts';
import { rfc3339 } from './times.ts';

function dateOf(atMs: number | null): string | null {
  return atMs === null ? null : rfc3339(atMs);
}

/** An animal as the wire carries it. */
export function animalView(animal: Animal): AnimalView {
  return {
    id: animal.id,
    name: animal.name,
    species: animal.species,
    class: animal.class,
    tag: animal.tag,
    inMilk: animal.inMilk,
    bornAt: dateOf(animal.bornAtMs),
    bredAt: dateOf(animal.bredAtMs),
    malesRemovedAt: dateOf(animal.malesRemovedAtMs),
    lastWeightGrams: animal.lastWeight?.mass.value ?? null,
    lastWeighedAt: animal.lastWeight === null ? null : rfc3339(animal.lastWeight.atMs),
  };
}

import type { HerdAnimal } from '../../core/herd/herd-animal.ts';
import type { AnimalView } from '../../shared/animal.ts';
import type { HerdAdvice } from '../herd/advice-now.ts';
import { sharedNow } from '../herd/shared-now.ts';
import { rfc3339 } from './times.ts';

function dateOf(atMs: number | null): string | null {
  return atMs === null ? null : rfc3339(atMs);
}

/** An animal as the wire carries it; `advice` and numbers shared are those of the whole herd. */
export function animalView(
  animal: HerdAnimal,
  { byAnimal, scored }: Pick<HerdAdvice, 'byAnimal' | 'scored'>,
  herd: readonly HerdAnimal[],
): AnimalView {
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
    visualTags: [...animal.visualTags],
    shares: [...(sharedNow(herd).get(animal.id) ?? [])],
    pen: animal.pen,
    mark: animal.mark,
    photo: animal.photo,
    kiddedAt: dateOf(animal.kiddedAtMs),
    inMilkSince: dateOf(animal.inMilkSinceMs),
    advice: scored.has(animal.id) ? (byAnimal.get(animal.id)?.advice ?? null) : null,
  };
}

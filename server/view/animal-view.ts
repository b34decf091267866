import type { HerdAnimal } from '../../core/herd/herd-animal.ts';
import type { AnimalView } from '../../shared/animal.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import type { Memory } from '../barn/memory.ts';
import { adviceNow, type HerdAdvice } from '../herd/advice-now.ts';
import { sharedNow } from '../herd/shared-now.ts';
import { keptBy } from './kept.ts';
import { rfc3339 } from './times.ts';

const theHerd = keptBy<BarnContext, AnimalView[]>();
const oneAnimal = keptBy<HerdAnimal, AnimalView>();

/** The animals on the farm as the wire carries them; the same array while nothing of them changed. */
export function herdView(barn: BarnContext): AnimalView[] {
  const { memory } = barn;
  const { animals } = memory;
  const advice = adviceNow(barn);
  return theHerd(barn, [animals, advice], () =>
    animals.map((animal) => {
      const rests = [
        advisedOn(animal, advice),
        sharedNow(animals).get(animal.id)?.join() ?? '',
        scoredAt(animal, memory),
      ];
      return oneAnimal(animal, rests, () => animalView(animal, advice, memory));
    }),
  );
}

function dateOf(atMs: number | null): string | null {
  return atMs === null ? null : rfc3339(atMs);
}

function advisedOn(
  { id }: HerdAnimal,
  { byAnimal, scored }: Pick<HerdAdvice, 'byAnimal' | 'scored'>,
): AnimalView['advice'] {
  return scored.has(id) ? (byAnimal.get(id)?.advice ?? null) : null;
}

function scoredAt({ id }: HerdAnimal, { scores }: Pick<Memory, 'scores'>): number | null {
  return scores.get(id)?.at(-1)?.atMs ?? null;
}

/** An animal as the wire carries it; `advice` and numbers shared are those of the whole herd. */
export function animalView(
  animal: HerdAnimal,
  advice: Pick<HerdAdvice, 'byAnimal' | 'scored'>,
  memory: Pick<Memory, 'animals' | 'scores'>,
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
    shares: [...(sharedNow(memory.animals).get(animal.id) ?? [])],
    pen: animal.pen,
    mark: animal.mark,
    photo: animal.photo,
    kiddedAt: dateOf(animal.kiddedAtMs),
    inMilkSince: dateOf(animal.inMilkSinceMs),
    advice: advisedOn(animal, advice),
    scoredAt: dateOf(scoredAt(animal, memory)),
  };
}

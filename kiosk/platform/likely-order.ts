import type { AnimalView } from '../../shared/animal.ts';

/** The whole herd, the likely ones first in the order given, the others after them by name. */
export function inLikelyOrder(animals: readonly AnimalView[], likely: readonly string[]): AnimalView[] {
  const rank = (animal: AnimalView): number => {
    const at = likely.indexOf(animal.id);
    return at < 0 ? likely.length : at;
  };
  return [...animals].sort((a, b) => rank(a) - rank(b) || a.name.localeCompare(b.name));
}

import { dosedApart, type Logged } from '../../core/hub/apart.ts';
import { animalsNamed } from '../../core/round/day-book.ts';
import type { NumberedEntry } from '../store/book-records.ts';
import type { BarnContext } from './barn-context.ts';

/** So many of an animal's newest treatments are looked through for one that was given apart. */
const LOOKED_THROUGH = 20;

/** Remembers where the animal of a treatment was dosed at two kiosks that did not know of each other's. */
export function lookForDosedApart({ store, memory }: BarnContext, entry: NumberedEntry, nowMs: number): void {
  const logged = (each: NumberedEntry): Logged => ({
    entry: each,
    kiosk: store.received.kioskOf('treatment', each.sequence),
  });
  const others = animalsNamed(entry).flatMap((animalId) => store.dayBook.ofAnimal(animalId, LOOKED_THROUGH));
  for (const other of dosedApart(logged(entry), others.map(logged), memory.formulary))
    store.apart.add(entry.treatment.id, other, nowMs);
}

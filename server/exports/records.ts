import type { Weighing } from '../../core/growth/weighing.ts';
import type { HerdAnimal } from '../../core/herd/herd-animal.ts';
import type { BookPlace } from '../store/book-pages.ts';
import type { NumberedEntry } from '../store/book-records.ts';
import type { AnimalScores } from '../store/scores.ts';
import type { Store } from '../store/store.ts';
import type { Asked } from './period.ts';

/** Rows read at once: few, so that whoever stands at the kiosk is not kept waiting. */
const PAGE = 200;

/** The treatments asked for, oldest first, read page by page. What is written meanwhile may come along. */
export function* treatmentsOf({ dayBook }: Store, asked: Asked): Generator<NumberedEntry> {
  const { fromMs, toMs, animalId } = asked;
  const filter = { fromMs, toMs, kind: 'treatment', ...(animalId === null ? {} : { animalId }) } as const;
  let place: BookPlace | null = null;
  for (;;) {
    const lines = dayBook.pageAfter(filter, place, PAGE);
    for (const line of lines) if (line.kind === 'treatment') yield line.entry;
    if (lines.length < PAGE) return;
    place = lines.at(-1)?.place ?? null;
  }
}

/** A weight for others: whose, and who weighed. */
export interface AnimalWeighing extends Weighing {
  readonly animalId: string;
  readonly by: string;
  /** The treatment it was dosed by; `null` where it stands by itself. */
  readonly treatmentId: string | null;
}

/** The weights asked for, animal by animal: those that stand by themselves, then those a dose went by. */
export function* weightsOf(
  store: Store,
  animals: readonly Pick<HerdAnimal, 'id' | 'life'>[],
  asked: Asked,
): Generator<AnimalWeighing> {
  const { fromMs, toMs } = asked;
  for (const { id: animalId, life } of animals) {
    // What was weighed under a record that was merged away comes with the animal it is.
    if (life.kind === 'merged') continue;
    if (asked.animalId !== null && animalId !== asked.animalId) continue;
    let last: (Weighing & { by: string }) | null = null;
    for (;;) {
      const page = store.weighings.after({ animalId, fromMs, toMs }, last, PAGE);
      for (const weighing of page) yield { ...weighing, animalId, treatmentId: null };
      last = page.at(-1) ?? null;
      if (page.length < PAGE) break;
    }
    for (const { treatment } of treatmentsOf(store, { ...asked, animalId })) {
      // A group's dose went by a weight that is among the others.
      if (treatment.offer.group !== null) continue;
      const { held, atMs } = treatment.offer.weight;
      const { mass, uncertainty } = held;
      yield {
        id: `${Math.round(atMs)}:${mass.value}`,
        mass,
        uncertainty,
        atMs: Math.round(atMs),
        method: 'scale',
        hoursOffFeed: null,
        animalId,
        by: treatment.by,
        treatmentId: treatment.id,
      };
    }
  }
}

/** The scores asked for, in the order they were written. */
export function* scoresOf({ scores }: Store, asked: Asked): Generator<AnimalScores & { sequence: number }> {
  let number = 0;
  for (;;) {
    const page = scores.after(asked, number, PAGE);
    yield* page;
    if (page.length < PAGE) return;
    number = page.at(-1)?.sequence ?? number;
  }
}

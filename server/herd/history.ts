import { type JudgedWeighing, judgeWeighings, type Weighing } from '../../core/growth/weighing.ts';
import type { Animal } from '../../core/herd/animal.ts';
import { type DayBookEntry, effectOf } from '../../core/round/day-book.ts';
import type { VisitWeight } from '../../core/round/offer.ts';
import type { Store } from '../store/store.ts';
import { weightKey } from '../store/weight-words.ts';

/** The most weights that are read of one animal. */
const MOST = 200;

/** Rows of the day book by the animal that stood on the platform, from those given since a time on. */
export function entriesByAnimal(
  entries: readonly DayBookEntry[],
  sinceMs = Number.NEGATIVE_INFINITY,
): Map<string, DayBookEntry[]> {
  const found = new Map<string, DayBookEntry[]>();
  for (const entry of entries) {
    if (entry.treatment.givenAtMs < sinceMs) continue;
    const id = weighedAnimal(entry);
    const own = found.get(id);
    if (own === undefined) found.set(id, [entry]);
    else own.push(entry);
  }
  return found;
}

/**
 * The weights of an animal, oldest first, each judged: those that stand by themselves, and those a dose went by. `own`
 * is the animal's rows of the day book.
 */
export function weighingsOf(
  animal: Pick<Animal, 'id' | 'species' | 'class'>,
  own: readonly DayBookEntry[],
  store: Store,
): JudgedWeighing[] {
  const known = new Map<string, Weighing>();
  for (const weighing of store.weighings.newest(animal.id, MOST)) known.set(weighing.id, weighing);
  for (const entry of own) {
    const { held, atMs } = entry.treatment.offer.weight;
    const id = weighingId(entry.treatment.offer.weight);
    known.set(id, {
      id,
      mass: held.mass,
      uncertainty: held.uncertainty,
      atMs: Math.round(atMs),
      method: 'scale',
      hoursOffFeed: null,
    });
  }
  const { said, hoursOffFeed } = store.weightWords.of(animal.id);
  const weighings = [...known.values()].map((weighing) => ({
    ...weighing,
    hoursOffFeed: hoursOffFeed.get(weighing.id) ?? weighing.hoursOffFeed,
  }));
  return judgeWeighings(animal, weighings, said).slice(-MOST);
}

/** The id of the weighing of a visit. */
export function weighingId({ held, atMs }: VisitWeight): string {
  return `${Math.round(atMs)}:${held.mass.value}`;
}

/** The rows of the day book but those whose weight somebody said to be wrong; `wrong` is of `weightKey`. */
export function withoutWrong(entries: readonly DayBookEntry[], wrong: ReadonlySet<string>): DayBookEntry[] {
  return entries.filter(
    (entry) => !wrong.has(weightKey(weighedAnimal(entry), weighingId(entry.treatment.offer.weight))),
  );
}

/** Who stood on the platform: the animal named last, whether or not it swallowed anything. */
function weighedAnimal(entry: DayBookEntry): string {
  const { animalId } = effectOf(entry);
  if (animalId !== null) return animalId;
  const named = entry.corrections.findLast(({ what }) => what.kind === 'wrong-animal')?.what;
  return named?.kind === 'wrong-animal' ? named.animalId : entry.treatment.offer.animal.id;
}

/** The last weight of those that are believed; `null` where none is. */
export function lastBelieved(judged: readonly JudgedWeighing[]): Animal['lastWeight'] {
  const last = judged.findLast(({ doubt }) => doubt === null)?.weighing;
  return last === undefined ? null : { mass: last.mass, atMs: last.atMs };
}

import { type JudgedWeighing, judgeWeighings, type Weighing } from '../../core/growth/weighing.ts';
import type { Animal } from '../../core/herd/animal.ts';
import type { VisitWeight } from '../../core/round/offer.ts';
import type { Store } from '../store/store.ts';

/** The most weights that are read of one animal. */
const MOST = 200;

/**
 * The weights of an animal, oldest first, each judged by itself and by what was said of it: those that stand by themselves,
 * and those a dose went by.
 */
export function weighingsOf(
  animal: Pick<Animal, 'id' | 'species' | 'class'>,
  store: Store,
): JudgedWeighing[] {
  const known = new Map<string, Weighing>();
  for (const weighing of store.weighings.newest(animal.id, MOST)) known.set(weighing.id, weighing);
  for (const weighing of store.dayBook.weights(animal.id, MOST)) known.set(weighing.id, weighing);
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

/**
 * The last weight of an animal: the last it was dosed by that nobody said to be wrong, or a later one that stands by itself
 * and is believed; `null` where there is none.
 */
export function lastWeightOf(
  animal: Pick<Animal, 'id' | 'species' | 'class'>,
  store: Store,
): Animal['lastWeight'] {
  const { said } = store.weightWords.of(animal.id);
  const alone = judgeWeighings(animal, store.weighings.newest(animal.id, MOST), said);
  const believed = alone.findLast(({ doubt }) => doubt === null)?.weighing;
  // Nothing said to be wrong leaves the first of them to be the one.
  const most = [...said.values()].includes('wrong') ? MOST : 1;
  const dosedBy = store.dayBook.dosedBy(animal.id, most).find(({ id }) => said.get(id) !== 'wrong');
  const last = dosedBy !== undefined && dosedBy.atMs >= (believed?.atMs ?? 0) ? dosedBy : believed;
  return last === undefined ? null : { mass: last.mass, atMs: last.atMs };
}

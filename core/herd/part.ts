import { type HerdAnimal, isPresent } from './herd-animal.ts';
import { sameNumber } from './numbers.ts';

/** Why two records that were merged cannot be parted. */
export type PartRefusal = 'not-merged' | 'gone' | 'name-in-use' | 'worn-by-another';

/** Both records after they were parted, or why they were not. */
export type PartResult =
  | { readonly ok: true; readonly kept: HerdAnimal; readonly gone: HerdAnimal }
  | { readonly ok: false; readonly why: PartRefusal };

/** The record that went on, as it was before the merge and as the merge left it. */
export interface AtMerge {
  readonly before: HerdAnimal;
  readonly after: HerdAnimal;
}

/** What of an animal a merge can have changed. */
const FIELDS = [
  'name',
  'class',
  'tag',
  'inMilk',
  'inMilkSinceMs',
  'bornAtMs',
  'bredAtMs',
  'malesRemovedAtMs',
  'kiddedAtMs',
  'pen',
  'mark',
  'photo',
] as const;

/**
 * Makes two animals of two records that were merged. What the merge gave to the one that went on is taken back, unless it
 * was edited since; the other is as it was. `herd` is all animals; the last weights are for the caller to read anew.
 */
export function partAnimals(
  kept: HerdAnimal,
  gone: HerdAnimal,
  { before, after }: AtMerge,
  herd: readonly HerdAnimal[],
): PartResult {
  if (gone.life.kind !== 'merged' || gone.life.intoId !== kept.id) return { ok: false, why: 'not-merged' };
  if (!isPresent(kept)) return { ok: false, why: 'gone' };
  const untouched = FIELDS.filter((field) => kept[field] === after[field]);
  const parted: HerdAnimal = {
    ...kept,
    ...Object.fromEntries(untouched.map((field) => [field, before[field]])),
    visualTags: without(kept.visualTags, before.visualTags, after.visualTags),
    formerTags: without(kept.formerTags, before.formerTags, after.formerTags),
  };
  const back: HerdAnimal = { ...gone, life: { kind: 'present' } };
  const others = [...herd.filter(({ id }) => id !== kept.id && id !== gone.id), parted].filter(isPresent);
  if (others.some(({ name }) => sameNumber(name) === sameNumber(back.name)))
    return { ok: false, why: 'name-in-use' };
  const tags = [parted, back].flatMap(({ tag }) => tag ?? []);
  const worn = others.some(({ id, tag }) => id !== kept.id && tag !== null && tags.includes(tag));
  if (worn || new Set(tags).size < tags.length) return { ok: false, why: 'worn-by-another' };
  const named = others.some(({ id, name }) => id !== kept.id && sameNumber(name) === sameNumber(parted.name));
  return named ? { ok: false, why: 'name-in-use' } : { ok: true, kept: parted, gone: back };
}

/** A list without what came to it by the merge. */
function without<T>(now: readonly T[], before: readonly T[], after: readonly T[]): T[] {
  const key = (item: T) => JSON.stringify(item);
  const own = new Set(before.map(key));
  const came = new Set(after.map(key).filter((item) => !own.has(item)));
  return now.filter((item) => !came.has(key(item)));
}

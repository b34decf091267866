import { type HerdAnimal, isPresent } from './herd-animal.ts';
import { sameNumber } from './numbers.ts';
import { checkTag, type TagRefusal } from './tag.ts';

/** Why a new tag is refused. */
export type RetagRefusal = TagRefusal | 'gone' | 'worn-by-another' | 'same-tag' | 'empty';

/** The animal with its new tag, or why not. */
export type RetagResult =
  | { readonly ok: true; readonly animal: HerdAnimal }
  | { readonly ok: false; readonly why: RetagRefusal; readonly wornBy: string | null };

function refused(why: RetagRefusal, wornBy: string | null = null): RetagResult {
  return { ok: false, why, wornBy };
}

/** Gives an animal a new electronic tag for a lost one, which is kept as a former number. `herd` is all animals. */
export function replaceTag(
  animal: HerdAnimal,
  digits: string,
  atMs: number,
  herd: readonly HerdAnimal[],
): RetagResult {
  if (!isPresent(animal)) return refused('gone');
  const checked = checkTag(digits);
  if (!checked.ok) return refused(checked.why);
  if (animal.tag === checked.tag) return refused('same-tag');
  const wearer = herd.find(
    (other) => other.id !== animal.id && isPresent(other) && other.tag === checked.tag,
  );
  if (wearer !== undefined) return refused('worn-by-another', wearer.id);
  return {
    ok: true,
    animal: { ...animal, tag: checked.tag, formerTags: withLost(animal, animal.tag, atMs) },
  };
}

/** Gives an animal a new visual tag for the lost one named, or one more where `lost` is `null`. */
export function replaceVisualTag(
  animal: HerdAnimal,
  lost: string | null,
  fresh: string,
  atMs: number,
  herd: readonly HerdAnimal[],
): RetagResult {
  if (!isPresent(animal)) return refused('gone');
  const number = fresh.trim();
  if (number === '') return refused('empty');
  const wears = (other: HerdAnimal): boolean =>
    other.visualTags.some((tag) => sameNumber(tag) === sameNumber(number));
  const wearer = herd.find((other) => other.id !== animal.id && isPresent(other) && wears(other));
  if (wearer !== undefined) return refused('worn-by-another', wearer.id);
  if (wears(animal)) return refused('same-tag');
  const kept = animal.visualTags.filter((tag) => lost === null || sameNumber(tag) !== sameNumber(lost));
  const gone = kept.length < animal.visualTags.length ? lost : null;
  return {
    ok: true,
    animal: { ...animal, visualTags: [...kept, number], formerTags: withLost(animal, gone, atMs) },
  };
}

function withLost(animal: HerdAnimal, number: string | null, untilMs: number): HerdAnimal['formerTags'] {
  return number === null ? animal.formerTags : [...animal.formerTags, { number, untilMs, why: 'lost' }];
}

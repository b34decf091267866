import { editAnimal } from './edit.ts';
import { type HerdAnimal, isPresent } from './herd-animal.ts';
import { sameNumber } from './numbers.ts';

/** Where two records of one animal can say different things, so that a person must say which is right. */
export const MERGE_FIELDS = ['name', 'class', 'born', 'tag'] as const;
/** One of them. */
export type MergeField = (typeof MERGE_FIELDS)[number];

/** By field, whose word is right: that of the record that goes on, or that of the one that goes up in it. */
export type MergeChoices = Readonly<Partial<Record<MergeField, 'kept' | 'gone'>>>;

/** Why two records cannot be one animal. */
export type MergeRefusal = 'same-record' | 'gone' | 'other-species' | 'undecided';

/** Both records after a merge, or why there was none. */
export type MergeResult =
  | { readonly ok: true; readonly kept: HerdAnimal; readonly gone: HerdAnimal }
  | { readonly ok: false; readonly why: MergeRefusal };

/** What a merge and its undoing look at of an animal. */
type Worn = Pick<HerdAnimal, 'name' | 'class' | 'tag' | 'bornAtMs'>;

/** The fields in which two records contradict each other. One that was young has grown up since, which is none. */
export function mergeConflicts(kept: Worn, gone: Worn): MergeField[] {
  const grown = kept.class !== 'young' && gone.class !== 'young';
  const differ: Readonly<Record<MergeField, boolean>> = {
    name: sameNumber(kept.name) !== sameNumber(gone.name),
    class: grown && kept.class !== gone.class,
    born: kept.bornAtMs !== null && gone.bornAtMs !== null && kept.bornAtMs !== gone.bornAtMs,
    tag: kept.tag !== null && gone.tag !== null && kept.tag !== gone.tag,
  };
  return MERGE_FIELDS.filter((field) => differ[field]);
}

/**
 * Makes one animal of two records: the first goes on and takes from the second what it does not know itself, and what
 * `choices` say the second knows better.
 *
 * The electronic tag that is worn no more becomes a former number, visual tags are all kept. Nothing is deleted: the second
 * stays as merged, and all that was written under it is read under the first.
 */
export function mergeAnimals(
  kept: HerdAnimal,
  gone: HerdAnimal,
  choices: MergeChoices,
  atMs: number,
  by: string,
): MergeResult {
  const why = whyNotMerge(kept, gone, choices);
  if (why !== null) return { ok: false, why };
  const [tag, other] = choices.tag === 'gone' ? [gone.tag, kept.tag] : [kept.tag ?? gone.tag, gone.tag];
  const former =
    other === null || other === tag ? [] : [{ number: other, untilMs: atMs, why: 'merged' } as const];
  const whole: HerdAnimal = {
    ...kept,
    name: choices.name === 'gone' ? gone.name : kept.name,
    tag,
    inMilk: kept.inMilk || gone.inMilk,
    bredAtMs: latest(kept.bredAtMs, gone.bredAtMs),
    malesRemovedAtMs: latest(kept.malesRemovedAtMs, gone.malesRemovedAtMs),
    kiddedAtMs: latest(kept.kiddedAtMs, gone.kiddedAtMs),
    inMilkSinceMs: latest(kept.inMilkSinceMs, gone.inMilkSinceMs),
    lastWeight:
      (gone.lastWeight?.atMs ?? Number.NEGATIVE_INFINITY) >
      (kept.lastWeight?.atMs ?? Number.NEGATIVE_INFINITY)
        ? gone.lastWeight
        : kept.lastWeight,
    bornAtMs: choices.born === 'gone' ? gone.bornAtMs : (kept.bornAtMs ?? gone.bornAtMs),
    pen: kept.pen ?? gone.pen,
    mark: kept.mark ?? gone.mark,
    photo: kept.photo ?? gone.photo,
    visualTags: union(kept.visualTags, gone.visualTags),
    formerTags: [...kept.formerTags, ...gone.formerTags, ...former],
  };
  const theirs = choices.class === 'gone' || kept.class === 'young';
  const classed = editAnimal(whole, { what: 'class', class: theirs ? gone.class : kept.class }, [], atMs);
  if (!classed.ok) return { ok: false, why: 'gone' };
  return {
    ok: true,
    kept: classed.animal,
    gone: { ...gone, life: { kind: 'merged', intoId: kept.id, atMs, by } },
  };
}

function whyNotMerge(kept: HerdAnimal, gone: HerdAnimal, choices: MergeChoices): MergeRefusal | null {
  if (kept.id === gone.id) return 'same-record';
  if (!isPresent(kept) || !isPresent(gone)) return 'gone';
  if (kept.species !== gone.species) return 'other-species';
  return mergeConflicts(kept, gone).some((field) => choices[field] === undefined) ? 'undecided' : null;
}

function latest(a: number | null, b: number | null): number | null {
  if (a === null || b === null) return a ?? b;
  return Math.max(a, b);
}

function union(first: readonly string[], second: readonly string[]): string[] {
  const known = new Set(first.map(sameNumber));
  return [...first, ...second.filter((number) => !known.has(sameNumber(number)))];
}

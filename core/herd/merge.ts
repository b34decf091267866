import { type HerdAnimal, isPresent } from './herd-animal.ts';
import { sameNumber } from './numbers.ts';

/** Why two records cannot be one animal. */
export type MergeRefusal = 'same-record' | 'gone' | 'other-species' | 'other-sex' | 'other-birth';

/** Both records after a merge, or why there was none. */
export type MergeResult =
  | { readonly ok: true; readonly kept: HerdAnimal; readonly gone: HerdAnimal }
  | { readonly ok: false; readonly why: MergeRefusal };

/**
 * Makes one animal of two records: the first goes on and takes from the second what it does not know itself.
 *
 * An electronic tag of the second that differs becomes a former number, visual tags are all kept. Nothing is deleted:
 * the second stays as merged, and its weights and treatments are read under the first (`goesOnAs`).
 */
export function mergeAnimals(kept: HerdAnimal, gone: HerdAnimal, atMs: number, by: string): MergeResult {
  const why = whyNotMerge(kept, gone);
  if (why !== null) return { ok: false, why };
  const otherTag = kept.tag !== null && gone.tag !== null && kept.tag !== gone.tag ? gone.tag : null;
  return {
    ok: true,
    kept: {
      ...kept,
      tag: kept.tag ?? gone.tag,
      class: kept.class === 'young' ? gone.class : kept.class,
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
      bornAtMs: kept.bornAtMs ?? gone.bornAtMs,
      pen: kept.pen ?? gone.pen,
      mark: kept.mark ?? gone.mark,
      photo: kept.photo ?? gone.photo,
      visualTags: union(kept.visualTags, gone.visualTags),
      formerTags: [
        ...kept.formerTags,
        ...gone.formerTags,
        ...(otherTag === null ? [] : [{ number: otherTag, untilMs: atMs, why: 'merged' } as const]),
      ],
    },
    gone: { ...gone, life: { kind: 'merged', intoId: kept.id, atMs, by } },
  };
}

function whyNotMerge(kept: HerdAnimal, gone: HerdAnimal): MergeRefusal | null {
  if (kept.id === gone.id) return 'same-record';
  if (!isPresent(kept) || !isPresent(gone)) return 'gone';
  if (kept.species !== gone.species) return 'other-species';
  const sexed = kept.class !== 'young' && gone.class !== 'young';
  if (sexed && kept.class !== gone.class) return 'other-sex';
  const born = kept.bornAtMs !== null && gone.bornAtMs !== null;
  return born && kept.bornAtMs !== gone.bornAtMs ? 'other-birth' : null;
}

function latest(a: number | null, b: number | null): number | null {
  if (a === null || b === null) return a ?? b;
  return Math.max(a, b);
}

function union(first: readonly string[], second: readonly string[]): string[] {
  const known = new Set(first.map(sameNumber));
  return [...first, ...second.filter((number) => !known.has(sameNumber(number)))];
}

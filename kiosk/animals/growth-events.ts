import type { AnimalPage, WeighingView } from '../../shared/animal-page.ts';

/** Something that happened to an animal and stands on its chart. */
export type GrowthEvent =
  | { readonly kind: 'weight'; readonly atMs: number; readonly weighing: WeighingView }
  | { readonly kind: 'dose'; readonly atMs: number; readonly treatment: AnimalPage['treatments'][number] }
  | { readonly kind: 'score'; readonly atMs: number; readonly scored: AnimalPage['scores'][number] };

/** Everything that stands on the chart of an animal, oldest first; what lies before its first weight is left out. */
export function growthEvents({
  weighings,
  treatments,
  scores,
}: Pick<AnimalPage, 'weighings' | 'treatments' | 'scores'>): GrowthEvent[] {
  const all: GrowthEvent[] = [
    ...weighings.map((weighing) => ({ kind: 'weight' as const, atMs: Date.parse(weighing.at), weighing })),
    ...treatments.map((treatment) => ({
      kind: 'dose' as const,
      atMs: Date.parse(treatment.givenAt),
      treatment,
    })),
    ...scores.map((scored) => ({ kind: 'score' as const, atMs: Date.parse(scored.at), scored })),
  ];
  const first = Math.min(...weighings.map(({ at }) => Date.parse(at)));
  return all.filter(({ atMs }) => atMs >= first).sort((a, b) => a.atMs - b.atMs);
}

/** The place in the list of the event nearest to a place along x; `null` for an empty list. */
export function nearestEvent(
  events: readonly GrowthEvent[],
  x: number,
  xOf: (ms: number) => number,
): number | null {
  const found = events.reduce<{ at: number; far: number } | null>((best, { atMs }, at) => {
    const far = Math.abs(xOf(atMs) - x);
    // Of several at one time the first counts; the arrows lead on to the others.
    return best === null || far < best.far ? { at, far } : best;
  }, null);
  return found?.at ?? null;
}

import type { TreatAdvice } from './who-to-treat.ts';

/**
 * Share of a mob to leave undosed by its mean eggs per gram, so that worms without resistance live on.
 *
 * wormboss.com.au, targeted treatment table; the nearest row counts, the higher of two as near.
 */
const SHARE_TO_LEAVE: readonly (readonly [eggsPerGram: number, share: number])[] = [
  [50, 1],
  [100, 0.5],
  [150, 0.3],
  [200, 0.25],
  [250, 0.2],
  [300, 0.15],
  [350, 0.15],
  [400, 0.1],
  [500, 0.1],
];

/** The highest mean of the table: beyond it no source gives a share. */
export const HIGHEST_MEAN = 500;

/** The share of the mob to leave undosed at a mean, as a fraction; `null` beyond the table or for no number. */
export function shareToLeave(meanEggsPerGram: number): number | null {
  if (!(meanEggsPerGram >= 0 && meanEggsPerGram <= HIGHEST_MEAN)) return null;
  const nearest = SHARE_TO_LEAVE.reduce((best, row) =>
    Math.abs(row[0] - meanEggsPerGram) <= Math.abs(best[0] - meanEggsPerGram) ? row : best,
  );
  return nearest[1];
}

/** How many are left undosed, held against how many should be. */
export interface Refugia {
  readonly treat: number;
  /** Left for now: advised to leave, or to be looked at again. */
  readonly left: number;
  /** `left` as a fraction of all. */
  readonly share: number;
  /** The share the mean asks for; `null` where no mean is known or it is beyond the table. */
  readonly advised: number | null;
  readonly verdict: 'enough-left' | 'too-few-left' | 'no-advice';
  /** Animals that could be left beside these, fittest first, where too few are. */
  readonly couldLeave: readonly string[];
}

/** Signs of an animal that is ill now: it is never named to be left. */
const ILL = new Set(['jaw-swollen', 'eyelid-pale']);

/** Holds today's advice against the share to leave; `null` for an empty list. The untreated ones should be marked. */
export function refugiaOf(advice: readonly TreatAdvice[], meanEggsPerGram: number | null): Refugia | null {
  if (advice.length === 0) return null;
  const treated = advice.filter((one) => one.advice === 'treat');
  const left = advice.length - treated.length;
  const advised = meanEggsPerGram === null ? null : shareToLeave(meanEggsPerGram);
  // 0.3 of 10 animals is 3, whatever doubles make of it.
  const wanted = advised === null ? 0 : Math.ceil(advised * advice.length - 1e-9);
  const found = { treat: treated.length, left, share: left / advice.length, advised };
  if (advised === null) return { ...found, verdict: 'no-advice', couldLeave: [] };
  if (left >= wanted) return { ...found, verdict: 'enough-left', couldLeave: [] };
  return { ...found, verdict: 'too-few-left', couldLeave: fittest(treated).slice(0, wanted - left) };
}

function fittest(treated: readonly TreatAdvice[]): string[] {
  const against = ({ reasons }: TreatAdvice): number =>
    reasons.filter(({ speaksFor }) => speaksFor !== 'leave').length;
  return treated
    .filter(({ reasons }) => !reasons.some(({ sign }) => ILL.has(sign)))
    .sort((a, b) => against(a) - against(b) || a.animalId.localeCompare(b.animalId))
    .map(({ animalId }) => animalId);
}

import type { Stretch } from './stretch.ts';

/** The level a load keeps coming back to, and how much each moment counts towards it. */
export interface Centre {
  readonly grams: number;
  /** Seconds for which each moment counts: its time, less where it is unquiet, apart or fresh from elsewhere. */
  readonly weights: Float64Array;
  /** Their sum, in seconds; above 0. */
  readonly total: number;
  /** Seconds for which each moment would count by its quiet alone, wherever its load lies. */
  readonly quiet: Float64Array;
  /** Variance of the counted moments about the level, in grams squared. */
  readonly variance: number;
  /** A load this far from the level is not of it, in grams. */
  readonly apart: number;
}

/** The usual roughness is looked for between these shares of the weight, where this share of moments is smoother. */
const ROUGHNESS_LEAST = 0.002;
const ROUGHNESS_MOST = 0.012;
const ROUGHNESS_QUANTILE = 0.35;
/** A moment several times as rough as usual belongs to a step, whose landing is no measure of a weight. */
const ROUGH = 6;
/** How far from the level a moment still counts: so many standard deviations, within these shares of the weight. */
const CUT_DEVIATIONS = 4.4;
const CUT_LEAST = 0.012;
const CUT_MOST = 0.06;
/** A load further off than this share is another: a hand, a gate, a foot beside the deck, another animal. */
const APART = 0.025;
/** For this long after the load comes back from elsewhere the scale still follows, in seconds. */
const FOLLOWS = 0.5;
const ROUNDS = 5;

/** Finds the level of the latest second and every earlier moment that shares it; `null` where none counts. */
export function findCentre(stretch: Stretch, divisionGrams: number): Centre | null {
  const { count, grams: loads } = stretch;
  const start = recentMiddle(stretch);
  const quiet = quietOf(stretch, start, divisionGrams);
  const weights = new Float64Array(count);
  let [grams, cut, total, variance] = [start, CUT_MOST * start, 0, 0];
  for (let round = 0; round < ROUNDS; round += 1) {
    weigh(stretch, quiet, grams, cut, weights);
    let sum = 0;
    total = 0;
    for (let i = 0; i < count; i += 1) {
      total += weights[i] ?? 0;
      sum += (weights[i] ?? 0) * (loads[i] ?? 0);
    }
    if (total <= 0) return null;
    grams = sum / total;
    let squares = 0;
    for (let i = 0; i < count; i += 1) squares += (weights[i] ?? 0) * ((loads[i] ?? 0) - grams) ** 2;
    variance = squares / total;
    const least = Math.hypot(CUT_LEAST * grams, 1.5 * divisionGrams);
    cut = Math.min(Math.max(CUT_MOST * grams, least), Math.max(least, CUT_DEVIATIONS * Math.sqrt(variance)));
  }
  return { grams, weights, total, quiet, variance, apart: Math.max(APART * grams, cut) };
}

function quietOf({ count, lasts, roughness }: Stretch, grams: number, divisionGrams: number): Float64Array {
  const usual = Math.sqrt(roughness.slice().sort()[Math.floor(ROUGHNESS_QUANTILE * count)] ?? 0);
  const expected = Math.min(ROUGHNESS_MOST * grams, Math.max(ROUGHNESS_LEAST * grams, usual));
  const rough = ROUGH * (expected ** 2 + divisionGrams ** 2 / 12);
  return lasts.map((seconds, i) => seconds / (1 + ((roughness[i] ?? 0) / rough) ** 2));
}

/** Tukey's biweight about the level, and a ramp behind every return to it. Writes into `weights`. */
function weigh(
  stretch: Stretch,
  quiet: Float64Array,
  grams: number,
  cut: number,
  weights: Float64Array,
): void {
  const apart = Math.max(APART * grams, cut);
  let away = (stretch.at[0] ?? 0) - 0.1;
  for (let i = 0; i < stretch.count; i += 1) {
    const at = stretch.at[i] ?? 0;
    const off = Math.abs((stretch.grams[i] ?? 0) - grams);
    if (off > apart) away = at;
    const back = Math.min(1, (at - away) / FOLLOWS);
    weights[i] = off >= cut ? 0 : (quiet[i] ?? 0) * (1 - (off / cut) ** 2) ** 2 * back ** 2;
  }
}

/** The middle of the last second's loads, quiet ones counting for more. */
function recentMiddle({ count, at, grams, lasts, roughness }: Stretch): number {
  const now = at[count - 1] ?? 0;
  const last = grams[count - 1] ?? 0;
  const floor = (0.004 * last) ** 2;
  const recent: { readonly grams: number; readonly weight: number }[] = [];
  let total = 0;
  for (let i = count - 1; i >= 0 && now - (at[i] ?? 0) <= 1; i -= 1) {
    const weight = (lasts[i] ?? 0) / ((roughness[i] ?? 0) + floor);
    recent.push({ grams: grams[i] ?? 0, weight });
    total += weight;
  }
  recent.sort((a, b) => a.grams - b.grams);
  let run = 0;
  for (const moment of recent) {
    run += moment.weight;
    if (run >= total / 2) return moment.grams;
  }
  return last;
}

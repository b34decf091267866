import { mean } from '../statistics/moments.ts';

/** Above this a negative binomial is hardly told from a Poisson; the search ends here (the kiosk's own guard). */
export const LARGEST_SHAPE = 1000;
const SMALLEST_SHAPE = 1e-4;
const HALVINGS = 80;

/**
 * The likeliest shape `k` of the negative binomial behind raw counts: small where few animals carry most eggs.
 *
 * Between 0.0001 and 1000 (included). Throws `RangeError` for counts that are all 0.
 */
export function likeliestShape(counts: readonly number[]): number {
  const average = mean(counts);
  if (!(average > 0)) throw new RangeError('counts that are all zero have no shape');
  let [low, high] = [Math.log(SMALLEST_SHAPE), Math.log(LARGEST_SHAPE)];
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (low + high) / 2;
    if (slopeAt(Math.exp(middle), counts, average) > 0) low = middle;
    else high = middle;
  }
  return Math.exp(high);
}

/** The slope of the log likelihood over the shape: for whole counts a difference of digammas is a plain sum. */
function slopeAt(shape: number, counts: readonly number[], average: number): number {
  let slope = -counts.length * Math.log1p(average / shape);
  for (const count of counts) {
    for (let j = 0; j < count; j += 1) slope += 1 / (shape + j);
  }
  return slope;
}

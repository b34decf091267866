/**
 * The share of worms killed by medicines given one after the other, each at its full dose, if each kills its own
 * share of those the others left: 1 - (1-a)(1-b)... Fractions from 0 to 1 (included), else throws `RangeError`.
 */
export function combinedEfficacy(efficacies: readonly number[]): number {
  return 1 - (survivors(1, efficacies).at(-1) ?? 1);
}

/**
 * What is left of a count after each medicine in turn.
 *
 * 1,000 eggs per gram through 80, 70 and 60 %: 200, 60, 24 (sheep101.info, combination treatments).
 */
export function survivors(start: number, efficacies: readonly number[]): number[] {
  let left = start;
  return efficacies.map((efficacy) => {
    if (!(efficacy >= 0 && efficacy <= 1))
      throw new RangeError(`an efficacy of ${efficacy} is not from 0 to 1`);
    left *= 1 - efficacy;
    return left;
  });
}

/** How a measured efficacy is spoken of. */
export type EfficacyBand = 'works' | 'resistant' | 'much-resistance' | 'not-alone';

/**
 * The band an efficacy falls into: under 0.95 resistant, under 0.8 much so (sheep101.info), under 0.5 not to be used
 * alone (wormx.info; sheep101.info says so under 0.6 already).
 */
export function efficacyBand(efficacy: number): EfficacyBand {
  if (efficacy < 0.5) return 'not-alone';
  if (efficacy < 0.8) return 'much-resistance';
  return efficacy < 0.95 ? 'resistant' : 'works';
}

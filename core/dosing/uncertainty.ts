/** One cause of doubt: what it is, and its standard uncertainty as a share of the result (k = 1). */
export interface Contribution {
  readonly of: string;
  readonly relative: number;
}

/** Several independent causes combined, and how much of the doubt each is to blame for. */
export interface Budget {
  /** Combined standard uncertainty as a share of the result (k = 1). */
  readonly relative: number;
  readonly contributions: readonly Contribution[];
  /** Each cause's part of the combined variance, in the order given; they add to 1, or are all 0. */
  readonly shares: readonly number[];
}

/** The standard uncertainty of a value anywhere within plus or minus `halfWidth` with equal chance (JCGM 100, 4.3.7). */
export function rectangular(halfWidth: number): number {
  return halfWidth / Math.sqrt(3);
}

/** The standard uncertainty of a value within plus or minus `halfWidth`, likelier in the middle (JCGM 100, 4.3.9). */
export function triangular(halfWidth: number): number {
  return halfWidth / Math.sqrt(6);
}

/**
 * Combines independent relative uncertainties of a product or quotient: the root of the sum of squares.
 *
 * Law of propagation, JCGM 100, 5.1.6: what `propagate` comes to where every input is a factor or a divisor.
 */
export function combine(contributions: readonly Contribution[]): Budget {
  const relative = Math.hypot(...contributions.map((contribution) => contribution.relative));
  const shares = contributions.map((contribution) =>
    relative === 0 ? 0 : (contribution.relative / relative) ** 2,
  );
  return { relative, contributions, shares };
}

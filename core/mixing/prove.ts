import type { Mass } from '../quantity/mass.ts';
import { distance } from '../quantity/quantity.ts';
import { type ExpectedGross, expectedGross } from './expected-gross.ts';
import { type Jug, mayBeInUse } from './jug.ts';

/** A gross weight at rest on the bench. */
export interface OnBench {
  readonly mass: Mass;
  /** Standard uncertainty (k = 1). */
  readonly uncertainty: Mass;
}

/** What the bench says of the jug in hand. */
export type BenchProof =
  | { readonly verdict: 'fits'; readonly expected: ExpectedGross }
  /** Its empty mass was never learned, so that the bench can say nothing. */
  | { readonly verdict: 'weight-unknown' }
  | { readonly verdict: 'nothing-there'; readonly expected: ExpectedGross }
  /** It weighs neither as this jug nor as any other should. */
  | { readonly verdict: 'weighs-otherwise'; readonly expected: ExpectedGross }
  /** It weighs as another jug in service should. */
  | { readonly verdict: 'weighs-as-another'; readonly expected: ExpectedGross; readonly other: Jug }
  /** It fits, but so would another jug of the same medicine: the scale cannot tell them apart. */
  | { readonly verdict: 'fits-two'; readonly expected: ExpectedGross; readonly other: Jug };

/** Nothing lighter than this is a jug, in grams. */
const LIGHTEST_JUG = 20;

/** Proves a jug by weight: what stands on the bench must weigh what the jug should, and no other jug of its medicine. */
export function proveOnBench(
  jug: Jug,
  jugs: readonly Jug[],
  onBench: OnBench,
  wallMs: number,
  clockTrusted: boolean,
): BenchProof {
  const expected = expectedGross(jug, onBench.uncertainty);
  if (expected === null) return { verdict: 'weight-unknown' };
  if (onBench.mass.value < LIGHTEST_JUG) return { verdict: 'nothing-there', expected };
  const others = jugs.filter((other) => other.id !== jug.id && mayBeInUse(other, wallMs, clockTrusted));
  const other = others.find((candidate) => fits(candidate, onBench));
  if (!fits(jug, onBench)) {
    return other === undefined
      ? { verdict: 'weighs-otherwise', expected }
      : { verdict: 'weighs-as-another', expected, other };
  }
  const rival = others.find((each) => each.medicineId === jug.medicineId && !isApart(each, onBench));
  return rival === undefined
    ? { verdict: 'fits', expected }
    : { verdict: 'fits-two', expected, other: rival };
}

function fits(jug: Jug, { mass, uncertainty }: OnBench): boolean {
  const expected = expectedGross(jug, uncertainty);
  return expected !== null && distance(expected.mass, mass).value <= expected.slack.value;
}

/** Whether a jug certainly is not what stands there; of one whose weight is not known that cannot be said. */
function isApart(jug: Jug, onBench: OnBench): boolean {
  return jug.weighed !== null && !fits(jug, onBench);
}

import { rectangular, triangular } from './uncertainty.ts';

/** How a value is believed to be spread around what was read. */
export type Spread =
  | { readonly shape: 'normal'; readonly standard: number }
  | { readonly shape: 'rectangular'; readonly halfWidth: number }
  | { readonly shape: 'triangular'; readonly halfWidth: number };

/** The standard uncertainty (k = 1) of a spread, in the unit of its value. */
export function standardOf(spread: Spread): number {
  switch (spread.shape) {
    case 'normal':
      return spread.standard;
    case 'rectangular':
      return rectangular(spread.halfWidth);
    case 'triangular':
      return triangular(spread.halfWidth);
  }
}

/** One input of a measurement: what it is, its value and how that is spread, in the same unit. */
export interface Input<Of extends string = string> {
  readonly of: Of;
  readonly value: number;
  readonly spread: Spread;
}

/** What one input does to the result. */
export interface Part<Of extends string = string> {
  readonly of: Of;
  /** How much the result moves for a move of one in this input. */
  readonly sensitivity: number;
  /** This input's standard uncertainty as it reaches the result: |sensitivity| times its own. */
  readonly uncertainty: number;
  /** Its part of the combined variance; the parts add to 1, or are all 0. */
  readonly share: number;
}

/** A result with its standard uncertainty (k = 1) and what that is made of, in the order of the inputs. */
export interface Propagated<Of extends string = string> {
  readonly value: number;
  readonly uncertainty: number;
  readonly parts: readonly Part<Of>[];
}

/** The least step of a central difference, as a share of the value: the cube root of a double's precision. */
const STEP = 6e-6;
/** The least step as a share of the standard uncertainty, for a value near zero. */
const STEP_OF_STANDARD = 1e-3;

/**
 * Propagates the uncertainties of independent inputs through a measurement model.
 *
 * Law of propagation to first order, JCGM 100, 5.1.2: the root of the sum of (sensitivity times uncertainty) squared.
 * The sensitivities are taken by central difference, so any smooth model will do. How the inputs are spread matters
 * here through their standard uncertainties alone.
 */
export function propagate<Of extends string>(
  inputs: readonly Input<Of>[],
  model: (values: readonly number[]) => number,
): Propagated<Of> {
  const values = inputs.map(({ value }) => value);
  const parts = inputs.map(({ of, value, spread }, i) => {
    const standard = standardOf(spread);
    const step = Math.max(STEP * Math.abs(value), STEP_OF_STANDARD * standard) || STEP;
    const at = (moved: number): number => model(values.with(i, moved));
    const sensitivity = (at(value + step) - at(value - step)) / (2 * step);
    return { of, sensitivity, uncertainty: Math.abs(sensitivity) * standard };
  });
  const uncertainty = Math.hypot(...parts.map((part) => part.uncertainty));
  return {
    value: model(values),
    uncertainty,
    parts: parts.map((part) => ({
      ...part,
      share: uncertainty === 0 ? 0 : (part.uncertainty / uncertainty) ** 2,
    })),
  };
}

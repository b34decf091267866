import { millilitres, type Volume } from '../quantity/volume.ts';

/** What weighing its deliveries told of a syringe, at one mark. */
export interface MeasuredSyringe {
  /** The mark it was filled to. */
  readonly mark: Volume;
  /** The mean delivery less the mark; positive delivers too much. */
  readonly bias: Volume;
  /** Standard uncertainty of the bias (k = 1). */
  readonly biasUncertainty: Volume;
  /** Standard deviation of one delivery. */
  readonly spread: Volume;
}

/** Two standard deviations either way hold about 95 % of what a syringe delivers. */
const K = 2;

/**
 * How far a measured syringe may be off its mark, either way:
 *
 * `(|bias| + 2 u(bias) + 2 spread) * max(1, expelled / mark)`
 *
 * The bias is not taken off the dose: which part of it lies in the marks and which in the hand is not known, so all of
 * it counts as doubt. Below the measured mark the error is kept whole, as of dead space or the eye; above it, it grows
 * with the volume, as of a barrel too wide. Our own rule.
 */
export function measuredTolerance(measured: MeasuredSyringe, expelled: Volume): Volume {
  const { mark, bias, biasUncertainty, spread } = measured;
  const atMark = Math.abs(bias.value) + K * biasUncertainty.value + K * spread.value;
  return millilitres(atMark * Math.max(1, expelled.value / mark.value));
}

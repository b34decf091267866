import { type MeasuredSyringe, measuredTolerance } from '../dosing/measured-syringe.ts';
import { type Syringe, syringeTolerance } from '../dosing/syringe.ts';
import { rectangular } from '../dosing/uncertainty.ts';
import { grams, type Mass } from '../quantity/mass.ts';
import { add } from '../quantity/quantity.ts';
import { celsius, type Temperature } from '../quantity/temperature.ts';
import { millilitres, type Volume } from '../quantity/volume.ts';
import { waterVolume } from '../water/density.ts';
import { scaleUncertainty } from '../weighing/reading.ts';

/** Deliveries weighed in one check: the count ISO 8655-6 takes for piston dispensers, from memory. */
export const DELIVERIES = 10;
/** The water's temperature is picked in steps of 5 degC, so it lies within this, either way. */
const TEMPERATURE_WITHIN = 2.5;

/** What ten weighed deliveries say of a syringe at one mark. */
export interface SyringeFindings extends MeasuredSyringe {
  /** Each delivery as a volume, in its order. */
  readonly volumes: readonly Volume[];
  /** What the standard allows at this mark, either way. */
  readonly allowed: Volume;
  /**
   * `within` where the whole measured tolerance is no more than the standard allows, `outside` where the mean alone
   * certainly passes it, `unclear` between.
   */
  readonly verdict: 'within' | 'unclear' | 'outside';
}

/** Deliveries weighed one after another into the same cup. */
export interface Deliveries {
  readonly syringe: Syringe;
  readonly mark: Volume;
  readonly temperature: Temperature;
  readonly division: Mass;
  /** What the scale rose by at each, in their order. */
  readonly delivered: readonly Mass[];
  /** How many more were left out in between. */
  readonly leftOut: number;
}

/**
 * What the masses of deliveries at one mark say.
 *
 * Each mass becomes a volume through the density of water and the buoyancy of air. Bias: mean less mark. Spread: the
 * standard deviation with n - 1 (JCGM 100, 4.2.2), and no less than what the scale itself adds to a difference of two
 * readings, division / sqrt(6). u(bias) combines the spread over sqrt(n), the water's temperature, and the scale: in
 * a mean of differences only the first and last readings count, and two more for each delivery left out.
 */
export function syringeFindings(deliveries: Deliveries): SyringeFindings {
  const { syringe, mark, temperature, division, delivered, leftOut } = deliveries;
  const n = delivered.length;
  const volumes = delivered.map((mass) => waterVolume(mass, temperature));
  const mean = volumes.reduce((sum, { value }) => sum + value, 0) / n;
  const deviation = Math.sqrt(volumes.reduce((sum, { value }) => sum + (value - mean) ** 2, 0) / (n - 1));
  const resolution = waterVolume(grams(division.value / Math.sqrt(6)), temperature).value;
  const spread = Math.max(deviation, resolution);
  const whole = delivered.reduce((sum, mass) => add(sum, mass), grams(0));
  const ends = Math.sqrt(2 * (1 + leftOut)) * scaleUncertainty(whole, division).value;
  const scale = waterVolume(grams(ends), temperature).value / n;
  const warmth = (mean * warmthEffect(temperature)) / 2;
  const biasUncertainty = Math.hypot(spread / Math.sqrt(n), scale, rectangular(warmth));
  const bias = mean - mark.value;
  const allowed = syringeTolerance(syringe, mark);
  const found = {
    mark,
    bias: millilitres(bias),
    biasUncertainty: millilitres(biasUncertainty),
    spread: millilitres(spread),
  };
  return {
    ...found,
    volumes,
    allowed,
    verdict: verdictOf(found, allowed),
  };
}

function verdictOf(found: MeasuredSyringe, allowed: Volume): SyringeFindings['verdict'] {
  if (measuredTolerance(found, found.mark).value <= allowed.value) return 'within';
  const surelyOff = Math.abs(found.bias.value) - 2 * found.biasUncertainty.value;
  return surelyOff > allowed.value ? 'outside' : 'unclear';
}

/** The share by which a volume of water changes across the temperatures it may have. */
function warmthEffect({ value }: Temperature): number {
  const at = (degrees: number): number =>
    waterVolume(grams(1), celsius(Math.min(40, Math.max(0, degrees)))).value;
  return Math.abs(at(value + TEMPERATURE_WITHIN) - at(value - TEMPERATURE_WITHIN)) / at(value);
}

/**
 * The coarsest division, of 1, 2 or 5 times a power of ten grams, that can tell a syringe at a mark from its standard:
 * half of what the standard allows. The scale then adds a third of the doubt the standard leaves: division / sqrt(6)
 * against allowed / sqrt(3). Our own guard.
 */
export function divisionFor(syringe: Syringe, mark: Volume): Mass {
  const most = syringeTolerance(syringe, mark).value / 2;
  const decade = 10 ** Math.floor(Math.log10(most) + 1e-9);
  const steps = [5, 2, 1].find((step) => step * decade <= most * (1 + 1e-9)) ?? 1;
  return grams(Number((steps * decade).toPrecision(1)));
}

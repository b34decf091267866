import { z } from 'zod';
import { Evidence, Figure } from './figure.ts';

/** A limit without a figure: why it stands and where that was read. */
const Sourced = z.strictObject({
  why: z.string().min(3).max(160),
  evidence: Evidence,
  source: z.string().min(8).max(400),
});

/** Which animals of the species the rule leaves out; `null` where no source read says so. */
export const Limits = z.strictObject({
  /** Not for the younger, in days. */
  minAgeDays: Figure.nullable(),
  /** Not for the lighter, in kilograms. */
  minWeightKg: Figure.nullable(),
  /** Not for a female in the first days after she was bred, nor after the males were taken away. */
  pregnancy: z.strictObject({ afterBredDays: Figure, afterMalesDays: Figure }).nullable(),
  /** Not for a female whose milk people take now. */
  notInMilk: Sourced.nullable(),
  /** Not for a dairy female of breeding age, though she be dry. */
  notDairy: Sourced.nullable(),
});
/** Which animals of the species the rule leaves out. */
export type Limits = z.infer<typeof Limits>;

/** Limits of a rule for which no source read gives any. */
export const NO_LIMITS: Limits = {
  minAgeDays: null,
  minWeightKg: null,
  pregnancy: null,
  notInMilk: null,
  notDairy: null,
};

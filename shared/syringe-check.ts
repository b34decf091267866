import { z } from 'zod';

/** A finished check of a syringe; volumes in mL. */
export const SyringeCheckRecordView = z.strictObject({
  id: z.string(),
  syringeId: z.string(),
  /** RFC 3339. */
  at: z.string(),
  /** Whether the clock was not trusted, so that `at` says nothing. */
  provisional: z.boolean(),
  by: z.string(),
  markMl: z.number().positive(),
  celsius: z.number(),
  /** Each delivery, in its order. */
  volumesMl: z.array(z.number()),
  leftOut: z.number().int().nonnegative(),
  /** The mean less the mark; positive delivers too much. */
  biasMl: z.number(),
  /** Standard uncertainty of the bias (k = 1). */
  biasUncertaintyMl: z.number().nonnegative(),
  /** Standard deviation of one delivery. */
  spreadMl: z.number().nonnegative(),
  /** What the syringe's standard allows at this mark, either way. */
  allowedMl: z.number().positive(),
  verdict: z.enum(['within', 'unclear', 'outside']),
});
/** A finished check of a syringe. */
export type SyringeCheckRecordView = z.infer<typeof SyringeCheckRecordView>;

/** A finished check of a syringe, and who took it back. */
export const KeptSyringeCheckView = SyringeCheckRecordView.extend({
  /** Since then the syringe counts as its catalogue says, unless it was checked anew; `null` where it was not taken back. */
  forgotten: z.strictObject({ at: z.string(), by: z.string() }).nullable(),
});
/** A finished check of a syringe, and who took it back. */
export type KeptSyringeCheckView = z.infer<typeof KeptSyringeCheckView>;

const task = { syringeId: z.string(), markMl: z.number().positive(), celsius: z.number() };

/** The check of a syringe, one step at a time; `liveGrams` is `null` while the bench shows nothing current. */
export const SyringeCheckView = z.discriminatedUnion('step', [
  z.strictObject({ step: z.literal('idle') }),
  z.strictObject({
    step: z.literal('cup'),
    ...task,
    liveGrams: z.number().nullable(),
    steady: z.boolean(),
  }),
  z.strictObject({
    step: z.literal('deliver'),
    ...task,
    /** Deliveries weighed so far, and how many there are to be. */
    done: z.number().int().nonnegative(),
    of: z.number().int().positive(),
    leftOut: z.number().int().nonnegative(),
    /** What came in since the last one; `null` while the bench shows nothing current. */
    riseGrams: z.number().nullable(),
    steady: z.boolean(),
  }),
  z.strictObject({ step: z.literal('result'), record: SyringeCheckRecordView }),
]);
/** The check of a syringe. */
export type SyringeCheckView = z.infer<typeof SyringeCheckView>;

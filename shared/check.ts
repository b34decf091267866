import { z } from 'zod';

/** A weight a scale can be checked with, as the keeper names it: 20 kg, 50 lb, 1 L of water. */
const WeightName = {
  id: z.string(),
  amount: z.number().positive(),
  unit: z.enum(['g', 'kg', 'lb', 'L']),
};
/** A weight a scale can be checked with. */
export const WeightView = z.strictObject(WeightName);
/** A weight a scale can be checked with. */
export type WeightView = z.infer<typeof WeightView>;

/** The scales that can be checked. */
export const CheckedRole = z.enum(['platform', 'bench']);
/** One of the scales that can be checked. */
export type CheckedRole = z.infer<typeof CheckedRole>;

/** The corners of a platform. */
export const CornerName = z.enum(['front-left', 'front-right', 'back-right', 'back-left']);
/** A corner of a platform. */
export type CornerName = z.infer<typeof CornerName>;

/** Where in a check something was read. */
export const SpotName = z.enum([
  'zero',
  'bottle',
  'middle',
  'returned',
  ...CornerName.options,
  'both',
  'down',
]);
/** Where in a check something was read. */
export type SpotName = z.infer<typeof SpotName>;

/** A reading held against what it should have been; masses in grams, error and limit in divisions of the scale. */
export const CheckPointView = z.strictObject({
  spot: SpotName,
  knownGrams: z.number(),
  shownGrams: z.number(),
  error: z.number(),
  limit: z.number(),
  within: z.boolean(),
});
/** A reading held against what it should have been. */
export type CheckPointView = z.infer<typeof CheckPointView>;

/** A finished check of a scale. */
export const ScaleCheckView = z.strictObject({
  id: z.string(),
  role: CheckedRole,
  /** RFC 3339. */
  at: z.string(),
  /** Whether the clock was not trusted, so that `at` says nothing. */
  provisional: z.boolean(),
  by: z.string(),
  divisionGrams: z.number().positive(),
  weight: WeightView,
  /** The second weight of the way up and down; `null` where that was skipped. */
  second: WeightView.nullable(),
  points: z.array(CheckPointView),
  /** How far apart the corners read, in divisions; `null` where there are none. */
  corners: z.strictObject({ spread: z.number(), limit: z.number(), within: z.boolean() }).nullable(),
  /** The weight was known too loosely to hold the scale to its tolerance. */
  rough: z.boolean(),
  verdict: z.enum(['passed', 'failed']),
});
/** A finished check of a scale. */
export type ScaleCheckView = z.infer<typeof ScaleCheckView>;

/** What a step that waits for a weighing shows: the scale now, `null` while that is not current, and whether it rests. */
const weighing = {
  role: CheckedRole,
  liveGrams: z.number().nullable(),
  steady: z.boolean(),
};
const withWeight = { ...weighing, weight: WeightView };
/** A weight to pick, and whether it is too light to tell anything on this scale. */
const choices = z.array(z.strictObject({ ...WeightName, tooLight: z.boolean() }));

/** The check of a scale, one step at a time. */
export const CheckView = z.discriminatedUnion('step', [
  z.strictObject({ step: z.literal('idle') }),
  z.strictObject({ step: z.literal('zero'), ...weighing, restarted: z.boolean() }),
  z.strictObject({ step: z.literal('weight'), role: CheckedRole, choices }),
  z.strictObject({ step: z.literal('bottle'), ...withWeight }),
  z.strictObject({ step: z.literal('middle'), ...withWeight }),
  z.strictObject({ step: z.literal('off'), ...withWeight }),
  z.strictObject({ step: z.literal('corner'), ...withWeight, corner: CornerName }),
  z.strictObject({ step: z.literal('second'), role: CheckedRole, choices }),
  z.strictObject({ step: z.literal('both'), ...withWeight, second: WeightView }),
  z.strictObject({ step: z.literal('down'), ...withWeight, second: WeightView }),
  z.strictObject({ step: z.literal('result'), record: ScaleCheckView }),
]);
/** The check of a scale. */
export type CheckView = z.infer<typeof CheckView>;

/** How the checks of a scale stand. */
export const ScaleChecksView = z.strictObject({
  /** The last one finished; `null` where there was none. */
  last: ScaleCheckView.nullable(),
  standing: z.enum(['never', 'fresh', 'undated', 'due', 'overdue', 'failed']),
});
/** How the checks of a scale stand. */
export type ScaleChecksView = z.infer<typeof ScaleChecksView>;

import { z } from 'zod';
import { Species } from './animal.ts';
import { CautionView } from './dose.ts';

/** An animal of a group with the weight it is taken at. */
const Weighed = z.strictObject({
  animal: z.string(),
  name: z.string(),
  grams: z.number(),
  /** RFC 3339. */
  weighedAt: z.string(),
});

/** One dose that fits several animals, by the weight of the heaviest. */
export const GroupView = z.strictObject({
  species: Species,
  volumeMl: z.number().positive(),
  syringeName: z.string(),
  syringeCapacityMl: z.number().positive(),
  syringeGraduationMl: z.number().positive(),
  marksMl: z.array(z.number().positive()),
  targetMgPerKg: z.number(),
  ceilingMgPerKg: z.number(),
  heaviest: Weighed,
  /** The lightest, and what it gets of this dose at k = 2. */
  lightest: Weighed.extend({
    gets: z.strictObject({ value: z.number(), low: z.number(), high: z.number() }),
  }),
  /** Heaviest first, each with what must be asked of it before its dose. */
  members: z.array(Weighed.extend({ asks: z.array(CautionView) })),
});
/** One dose that fits several animals. */
export type GroupView = z.infer<typeof GroupView>;

/** An animal that is in no group, and why. */
export const OutOfGroupView = z.strictObject({
  animal: z.string(),
  name: z.string(),
  why: z.enum(['left-out', 'never-weighed', 'weight-too-old', 'no-dose', 'stop']),
  /** What stops it, with `stop`. */
  caution: CautionView.nullable(),
});
/** An animal that is in no group, and why. */
export type OutOfGroupView = z.infer<typeof OutOfGroupView>;

/** The animals chosen, in groups that one dose of a jug each fits. */
export const GroupsView = z.strictObject({
  /** Whether the jug is proved in hand and no visit is under way with it: only then may a dose be logged. */
  inHand: z.boolean(),
  groups: z.array(GroupView),
  out: z.array(OutOfGroupView),
});
/** The animals chosen, in groups that one dose of a jug each fits. */
export type GroupsView = z.infer<typeof GroupsView>;

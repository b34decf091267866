import { z } from 'zod';
import { MOST_EGGS } from '../core/worms/egg-factor.ts';
import { intentId as id, ref } from './refs.ts';

/** How a sample was made countable: a slide by its figures, or the factor a laboratory told. */
export const SampleMethodView = z.discriminatedUnion('kind', [
  z
    .strictObject({
      kind: z.literal('slide'),
      dungGrams: z.number().positive().max(100),
      /** Dung and flotation fluid together. */
      suspensionMl: z.number().positive().max(1000),
      /** What lies under the marked fields, all chambers together. */
      countedMl: z.number().positive(),
    })
    .refine(({ suspensionMl, countedMl }) => countedMl <= suspensionMl, {
      path: ['countedMl'],
      message: 'no more can be counted than was made up',
    }),
  z.strictObject({ kind: z.literal('told'), factor: z.number().positive().max(10_000) }),
]);
/** How a sample was made countable. */
export type SampleMethodView = z.infer<typeof SampleMethodView>;

/** Raw eggs counted, before anything is multiplied. */
export const EggsView = z.number().int().min(0).max(MOST_EGGS);

/** What a count was made for. */
export const PurposeView = z.enum(['herd', 'ill', 'bought-in']);

/** Which sampling of a test a count belongs to. */
export const StageView = z.enum(['before', 'after']);
/** Which sampling of a test a count belongs to. */
export type StageView = z.infer<typeof StageView>;

/** One sample counted, with what was said of it later. */
export const EggCountView = z.strictObject({
  id: z.string(),
  /** One animal, or all of a mixed sample. */
  animals: z.array(z.strictObject({ id: z.string(), name: z.string() })),
  /** Raw eggs as they count today. */
  eggs: z.number().int(),
  method: SampleMethodView,
  /** Eggs per gram for each egg seen, unrounded. */
  factor: z.number(),
  eggsPerGram: z.number(),
  /** Between which eggs per gram it lies by the doubt of counting alone, 95 %. */
  low: z.number(),
  high: z.number(),
  purpose: z.enum(['herd', 'ill', 'bought-in', 'test']),
  test: z.strictObject({ id: z.string(), stage: StageView }).nullable(),
  /** RFC 3339; of the day the dung was taken, and of the entry. */
  takenAt: z.string(),
  loggedAt: z.string(),
  by: z.string(),
  /** Taken back: it counts for nothing. */
  takenBack: z.boolean(),
  corrections: z.array(
    z.strictObject({
      kind: z.enum(['taken-back', 'other-number']),
      eggs: z.number().int().nullable(),
      at: z.string(),
      by: z.string(),
    }),
  ),
});
/** One sample counted. */
export type EggCountView = z.infer<typeof EggCountView>;

/** The mean of the herd by its newest batch of samples. */
export const HerdMeanView = z.strictObject({
  eggsPerGram: z.number(),
  low: z.number(),
  high: z.number(),
  /** Animals behind it, those in mixed samples included. */
  animals: z.number().int(),
  /** RFC 3339 of its first and last sample. */
  from: z.string(),
  to: z.string(),
});
/** The mean of the herd. */
export type HerdMeanView = z.infer<typeof HerdMeanView>;

/** The egg counts: `GET /api/egg-counts`, newest first. */
export const EggCountsView = z.strictObject({
  /** `null` where no batch is new enough. */
  mean: HerdMeanView.nullable(),
  counts: z.array(EggCountView),
});
/** The egg counts. */
export type EggCountsView = z.infer<typeof EggCountsView>;

/** What a person can want of egg counts. */
export const EGG_INTENTS = [
  /** Logs one sample. `takenOn` is a date such as "2026-04-30"; `null` is today. */
  z.strictObject({
    type: z.literal('log-egg-count'),
    id,
    animalIds: z.array(ref).min(1).max(60),
    eggs: EggsView,
    method: SampleMethodView,
    takenOn: z.iso.date().nullable(),
    why: z.discriminatedUnion('for', [
      z.strictObject({ for: z.literal('look'), purpose: PurposeView }),
      z.strictObject({ for: z.literal('test'), testId: ref, stage: StageView }),
    ]),
  }),
  /** Says later what a sample really was. */
  z.strictObject({
    type: z.literal('correct-egg-count'),
    id,
    countId: ref,
    what: z.discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('taken-back') }),
      z.strictObject({ kind: z.literal('other-number'), eggs: EggsView }),
    ]),
  }),
] as const;

import { z } from 'zod';
import { Advice, AnimalNote, AnimalView } from './animal.ts';
import { TreatmentView } from './dose.ts';
import { EggCountView, HerdMeanView } from './egg-count.ts';
import { ScoredView } from './herd-intents.ts';

/** One weight in an animal's history. */
export const WeighingView = z.strictObject({
  id: z.string(),
  grams: z.number(),
  /** Standard uncertainty; `null` where not known. */
  uncertaintyGrams: z.number().nullable(),
  /** RFC 3339. */
  at: z.string(),
  method: z.enum(['scale', 'girth', 'guess', 'imported']),
  /** What speaks against it; `null` where nothing does. */
  doubt: z.enum(['outside-species', 'pounds-for-kilograms', 'far-from-last', 'said-wrong']).nullable(),
  /** What a person said of it last; `null` where nobody did. */
  said: z.enum(['true', 'wrong']).nullable(),
  /** Hours without feed before it; `null` where not noted. */
  hoursOffFeed: z.number().nullable(),
});
/** One weight in an animal's history. */
export type WeighingView = z.infer<typeof WeighingView>;

/** How an animal grows, in grams a day. */
export const GrowthView = z.strictObject({
  /** Between its last two weights at least a day apart; `null` where there are none. */
  lastGain: z.number().nullable(),
  /** The slope over its weights with 95 % limits; `null` for fewer than three. */
  trend: z
    .strictObject({
      gain: z.number(),
      low: z.number(),
      high: z.number(),
      direction: z.enum(['gaining', 'losing', 'not-clear']),
      used: z.number().int(),
      doubted: z.number().int(),
      /** Whether weights full and weights off feed are mixed in it. */
      unlikeFeed: z.boolean(),
    })
    .nullable(),
  /** Held against the others of its kind over the last weeks; `null` where there are too few. */
  mob: z
    .strictObject({
      own: z.number(),
      mean: z.number(),
      others: z.number().int(),
      standing: z.enum(['behind', 'with-the-mob']),
    })
    .nullable(),
});
/** How an animal grows. */
export type GrowthView = z.infer<typeof GrowthView>;

/** One reason of an advice: a sign, which way it speaks, and the source of its rule. */
export const ReasonView = z.strictObject({
  sign: z.enum([
    'jaw-swollen',
    'eyelid-pale',
    'eyelid-middling',
    'eyelid-red',
    'eyelid-recovering',
    'thin',
    'body-fit',
    'soiled',
    'clean',
    'coat-rough',
    'coat-smooth',
    'behind-the-mob',
    'with-the-mob',
    'jaw-sound',
    'not-scored',
    'eyelid-alone',
  ]),
  speaksFor: Advice,
  source: z.string(),
});
/** One reason of an advice. */
export type ReasonView = z.infer<typeof ReasonView>;

/** The advice for one animal. */
export const AdviceView = z.strictObject({
  animal: z.string(),
  advice: Advice,
  reasons: z.array(ReasonView),
  /** RFC 3339. */
  lookAgainAt: z.string(),
});
/** The advice for one animal. */
export type AdviceView = z.infer<typeof AdviceView>;

/** Everything its own page shows of an animal: `GET /api/animals/:id`. Lists are newest first. */
export const AnimalPage = z.strictObject({
  animal: AnimalView,
  life: z.enum(['present', 'sold', 'died', 'merged']),
  /** RFC 3339; `null` while it is here. */
  leftAt: z.string().nullable(),
  formerTags: z.array(z.string()),
  /** The animal this record was merged into; `null` where it was not, or that one is not here any more. */
  mergedInto: z.strictObject({ id: z.string(), name: z.string() }).nullable(),
  /** Records that were merged into this one, and who said so. */
  merged: z.array(z.strictObject({ id: z.string(), name: z.string(), at: z.string(), by: z.string() })),
  weighings: z.array(WeighingView),
  growth: GrowthView,
  scores: z.array(ScoredView.extend({ at: z.string(), by: z.string() })),
  notes: z.array(z.strictObject({ note: AnimalNote, at: z.string(), by: z.string() })),
  treatments: z.array(TreatmentView),
  /** Samples it has a part in, without those taken back. */
  eggCounts: z.array(EggCountView),
  /** `null` for an animal that has left. */
  advice: AdviceView.nullable(),
});
/** Everything its own page shows of an animal. */
export type AnimalPage = z.infer<typeof AnimalPage>;

/** Whom to treat today: `GET /api/whom-to-treat`. */
export const WhomView = z.strictObject({
  season: z.enum(['high', 'low']),
  /** The mean eggs per gram that counts: what a person entered, else that of the counts; `null` where none is known. */
  eggsPerGram: z.number().nullable(),
  /** Whether a person entered it, over what the counts say. */
  eggsEntered: z.boolean(),
  /** The mean of the newest batch of counts; `null` where none is new enough. */
  counted: HerdMeanView.nullable(),
  /** Those to treat first, then those to look at again, then those to leave. */
  rows: z.array(AdviceView),
  /** How many are left against the advice; `null` for an empty herd. Animals not scored are not counted. */
  left: z
    .strictObject({
      treat: z.number().int(),
      left: z.number().int(),
      share: z.number(),
      advised: z.number().nullable(),
      verdict: z.enum(['enough-left', 'too-few-left', 'no-advice']),
      couldLeave: z.array(z.string()),
    })
    .nullable(),
  notScored: z.number().int(),
});
/** Whom to treat today. */
export type WhomView = z.infer<typeof WhomView>;

import { z } from 'zod';
import { Species } from './animal.ts';
import { SampleMethodView } from './egg-count.ts';
import { intentId as id, ref } from './refs.ts';

/** What the 2023 guideline calls a result. */
export const VerdictView = z.enum(['resistant', 'low-resistant', 'susceptible', 'inconclusive']);
/** What the 2023 guideline calls a result. */
export type VerdictView = z.infer<typeof VerdictView>;

const design = z.enum(['paired', 'unpaired']);
const protocol = z.enum(['clinical', 'research']);

/** Where a test stands. */
export const TestStepView = z.enum(['before', 'waiting', 'due', 'overdue', 'done', 'given-up']);
/** Where a test stands. */
export type TestStepView = z.infer<typeof TestStepView>;

/** An interval of fractions, never clamped. */
const interval = z.strictObject({ lower: z.number(), upper: z.number() });

/** What a test says, or why it says nothing. Efficacies are fractions; below 0 they mean more eggs after. */
export const TestResultView = z.discriminatedUnion('ok', [
  z.strictObject({
    ok: z.literal(true),
    verdict: VerdictView,
    /** The method that judged, as the guideline's own tool would choose it. */
    by: z.enum(['delta', 'bnb-own-shape', 'bnb-published-shapes']),
    reduction: z.number(),
    /** 90 % limits. */
    limits: interval,
    /** The two chances where the method has them. */
    chances: z.strictObject({ resistance: z.number(), susceptibility: z.number() }).nullable(),
    thresholds: z.strictObject({ expected: z.number(), lowest: z.number() }),
    animals: z.strictObject({ before: z.number().int(), after: z.number().int() }),
    eggs: z.strictObject({ before: z.number().int(), after: z.number().int() }),
    /** Mean eggs per gram with 95 % limits of counting alone. */
    means: z.strictObject({
      before: z.strictObject({ value: z.number(), low: z.number(), high: z.number() }),
      after: z.strictObject({ value: z.number(), low: z.number(), high: z.number() }),
    }),
    /** Fewer than 5 animals. */
    extremeCare: z.boolean(),
    fewEggs: z.boolean(),
    /** How the efficacy is spoken of in the trade. */
    band: z.enum(['works', 'resistant', 'much-resistance', 'not-alone']),
  }),
  z.strictObject({
    ok: z.literal(false),
    why: z.enum([
      'composite',
      'factors-differ',
      'too-few-animals',
      'nothing-before',
      'not-counts',
      'too-few-eggs',
    ]),
  }),
]);
/** What a test says. */
export type TestResultView = z.infer<typeof TestResultView>;

/** What else than resistance may have made a result. */
export const ConfounderView = z.enum([
  'dose-short',
  'dose-not-kept',
  'strength-doubtful',
  'weight-not-from-scale',
  'weight-by-group',
  'scale-unchecked',
  'scale-failed-check',
  'syringe-unchecked',
  'other-medicine',
  'sampled-early',
  'sampled-late',
  'few-eggs',
  'fell-untreated',
  'no-untreated-group',
  'genera-not-told',
]);
/** What else than resistance may have made a result. */
export type ConfounderView = z.infer<typeof ConfounderView>;

const testRow = {
  id: z.string(),
  medicine: z.string(),
  active: z.string(),
  species: Species,
  design,
  step: TestStepView,
  /** RFC 3339 of the last dose in it, and of the window of its second samples. */
  treatedAt: z.string(),
  dueFrom: z.string(),
  dueBest: z.string(),
  dueUntil: z.string(),
  /** How many counts are missing at each sampling. */
  missing: z.strictObject({ before: z.number().int(), after: z.number().int() }),
  /** The verdict of a finished test. */
  verdict: VerdictView.nullable(),
  reduction: z.number().nullable(),
};

/** One test in the list. */
export const TestRowView = z.strictObject(testRow);
/** One test in the list. */
export type TestRowView = z.infer<typeof TestRowView>;

/** Medicines with a finished test in one species, given one after the other at the full dose each. */
export const TogetherView = z.strictObject({
  species: Species,
  parts: z.array(z.strictObject({ testId: z.string(), medicine: z.string(), efficacy: z.number() })),
  /** The share killed by all of them. */
  together: z.number(),
  /** What is left of 1,000 after each in turn. */
  leftOfThousand: z.array(z.number()),
});
/** Medicines given one after the other. */
export type TogetherView = z.infer<typeof TogetherView>;

/** The reduction tests: `GET /api/reduction-tests`, those that want something first. */
export const TestsView = z.strictObject({
  tests: z.array(TestRowView),
  together: z.array(TogetherView),
  /** Whether anything was dosed in the last day that a test could be planned of. */
  canPlan: z.boolean(),
});
/** The reduction tests. */
export type TestsView = z.infer<typeof TestsView>;

/** One animal of a test; counts are raw eggs, `null` where missing. */
export const TestAnimalView = z.strictObject({
  id: z.string(),
  name: z.string(),
  treated: z.boolean(),
  before: z.number().int().nullable(),
  after: z.number().int().nullable(),
});
/** One animal of a test. */
export type TestAnimalView = z.infer<typeof TestAnimalView>;

/** One test with all that is known of it: `GET /api/reduction-tests/:id`. */
export const TestPage = z.strictObject({
  ...testRow,
  protocol,
  method: SampleMethodView,
  window: z.strictObject({
    fromDay: z.number().int(),
    untilDay: z.number().int(),
    evidence: z.enum(['published', 'from-memory']),
    source: z.string(),
  }),
  plannedAt: z.string(),
  by: z.string(),
  animals: z.array(TestAnimalView),
  /** What the counts come to so far; `null` while fewer than two animals are whole. */
  result: TestResultView.nullable(),
  /** Animals left out since a sample is missing. */
  dropped: z.number().int(),
  untreatedFell: z.number().nullable(),
  /** The reduction with what the untreated fell by taken off. */
  controlled: z.number().nullable(),
  /** `doses` is how many it is about; 0 where it is about the whole test. */
  confounders: z.array(z.strictObject({ confounder: ConfounderView, doses: z.number().int() })),
  /** Those counts were given up, or ended by the keeper's word. */
  ended: z.strictObject({ how: z.enum(['judged', 'given-up']), at: z.string(), by: z.string() }).nullable(),
});
/** One test with all that is known of it. */
export type TestPage = z.infer<typeof TestPage>;

/** What can be tested of what was dosed in the last day: `GET /api/reduction-plan`. */
export const PlanView = z.strictObject({
  rounds: z.array(
    z.strictObject({
      medicineId: z.string(),
      medicine: z.string(),
      species: Species,
      /** Weighed, with a whole dose kept down; those that should show most eggs first. */
      treated: z.array(
        z.strictObject({ id: z.string(), name: z.string(), lastEggsPerGram: z.number().nullable() }),
      ),
      /** Dosed too, and not to be sampled: spat out, a part only, or not weighed. */
      leftOut: z.number().int(),
      /** Of the same species, without a dose in the last day. */
      untreated: z.array(z.strictObject({ id: z.string(), name: z.string() })),
      /** What the herd or these animals last showed; `null` where nobody counted. */
      expectedEggsPerGram: z.number().nullable(),
      window: z.strictObject({
        fromDay: z.number().int(),
        untilDay: z.number().int(),
        evidence: z.enum(['published', 'from-memory']),
      }),
    }),
  ),
});
/** What can be tested. */
export type PlanView = z.infer<typeof PlanView>;

/** A medicine whose last test in a species failed. */
export const FailedTestView = z.strictObject({
  testId: z.string(),
  active: z.string(),
  species: Species,
  verdict: z.enum(['resistant', 'low-resistant']),
  reduction: z.number(),
  /** RFC 3339. */
  at: z.string(),
});
/** A medicine whose last test in a species failed. */
export type FailedTestView = z.infer<typeof FailedTestView>;

/** What the state tells of the worm check: counts, and when to ask again. */
export const WormCheckView = z.strictObject({
  /** Grows with every egg count and test: what was asked of them before is stale then. */
  revision: z.number().int(),
  /** Tests that have not come to their end. */
  open: z.number().int(),
  /** Those of them that want something now. */
  due: z.number().int(),
  failed: z.array(FailedTestView),
});
/** What the state tells of the worm check. */
export type WormCheckView = z.infer<typeof WormCheckView>;

/** What a person can want of reduction tests. */
export const TEST_INTENTS = [
  /** Plans a test of what was dosed in the last day. */
  z.strictObject({
    type: z.literal('plan-test'),
    id,
    medicineId: ref,
    species: Species,
    design,
    protocol,
    method: SampleMethodView,
    treated: z.array(ref).min(2).max(60),
    untreated: z.array(ref).max(60),
  }),
  /** Judges a test by the counts there are, or gives it up. */
  z.strictObject({ type: z.literal('end-test'), id, testId: ref, how: z.enum(['judged', 'given-up']) }),
] as const;

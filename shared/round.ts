import { z } from 'zod';
import { AfterDoseView } from './after-dose.ts';
import { CautionView, OfferView, TreatmentView } from './dose.ts';

/** A weight held in this visit. */
export const HeldView = z.strictObject({
  grams: z.number(),
  /** Standard uncertainty (k = 1). */
  uncertaintyGrams: z.number(),
  /** RFC 3339. */
  at: z.string(),
});
/** A weight held in this visit. */
export type HeldView = z.infer<typeof HeldView>;

/** What the bench says of the jug in hand. */
export const JugProofView = z.strictObject({
  verdict: z.enum([
    'fits',
    'weight-unknown',
    'nothing-there',
    'weighs-otherwise',
    'weighs-as-another',
    'fits-two',
    'bench-not-ready',
    'bench-moving',
    'scale-tared',
  ]),
  nowGrams: z.number().nullable(),
  /** What the jug should weigh; `null` while that cannot be compared. */
  expectedGrams: z.number().nullable(),
  /** The number of the jug that stands there, or would weigh the same; else `null`. */
  otherNumber: z.number().int().nullable(),
});
/** What the bench says of the jug in hand. */
export type JugProofView = z.infer<typeof JugProofView>;

const visit = {
  jugId: z.string(),
  /** Id of the animal, once known. */
  animal: z.string().nullable(),
  weight: HeldView.nullable(),
  onDeck: z.boolean(),
};

/** The round, one step at a time. The dose itself is in the state's `offer`. */
export const RoundView = z.discriminatedUnion('step', [
  z.strictObject({ step: z.literal('no-jug'), unanswered: z.array(OfferView) }),
  z.strictObject({
    step: z.literal('prove-jug'),
    jugId: z.string(),
    /** Whether another live jug of the same medicine makes a held press necessary. */
    rival: z.boolean(),
    bench: JugProofView,
    /** Id of the animal that gets it in the visit under way; `null` where a new visit begins. */
    animal: z.string().nullable(),
    unanswered: z.array(OfferView),
  }),
  z.strictObject({
    step: z.literal('visit'),
    ...visit,
    /** Animal ids, likeliest first by the weight on the platform. */
    likely: z.array(z.string()),
    unanswered: z.array(OfferView),
  }),
  z.strictObject({
    step: z.literal('which-animal'),
    ...visit,
    between: z.array(z.string()),
    unanswered: z.array(OfferView),
  }),
  z.strictObject({
    step: z.literal('cautions'),
    ...visit,
    cautions: z.array(CautionView),
    /** Codes of the asks already accepted. */
    accepted: z.array(z.string()),
    unanswered: z.array(OfferView),
  }),
  z.strictObject({ step: z.literal('offered'), ...visit, unanswered: z.array(OfferView) }),
  z.strictObject({ step: z.literal('logging'), ...visit, unanswered: z.array(OfferView) }),
  z.strictObject({
    step: z.literal('logged'),
    ...visit,
    treatment: TreatmentView,
    /** What to watch for and do now; `null` where nothing is known of it. */
    after: AfterDoseView.nullable(),
    /** What may follow for the same animal by the same weight: jugs in use of its extras, and its own for the rest of a part. */
    followUps: z.array(z.strictObject({ jugId: z.string(), rest: z.boolean() })),
    /** RFC 3339: until then the screen offers to take it back. */
    undoUntil: z.string(),
    unanswered: z.array(OfferView),
  }),
]);
/** The round, one step at a time. */
export type RoundView = z.infer<typeof RoundView>;

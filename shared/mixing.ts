import { z } from 'zod';
import { JugView } from './jug.ts';

/** How much powder: whole packets, or a share of one that is weighed in. */
export const PowderAmountView = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('packets'), count: z.number().int().min(1).max(20) }),
  z.strictObject({ kind: z.literal('weighed'), share: z.number().positive().max(1) }),
]);
/** How much powder. */
export type PowderAmountView = z.infer<typeof PowderAmountView>;

/** What a named volume means: powder and water together, or the water the powder goes into. */
export const MixModeView = z.enum(['make-up-to', 'add-to']);
/** What a named volume means. */
export type MixModeView = z.infer<typeof MixModeView>;

/** A volume for a packet, with how it would serve the herd. */
export const DilutionView = z.strictObject({
  perPacketMl: z.number(),
  /** The volume for the powder chosen, as it is named: made up to, or added to. */
  namedMl: z.number(),
  /** What the jug would hold. */
  jugMl: z.number(),
  strengthMgPerMl: z.number(),
  origin: z.enum(['printed', 'sums', 'entered']),
  source: z.string(),
  /** Animals that have a rule for the medicine, and those of them taken by the band of their class. */
  animals: z.number().int(),
  guessed: z.number().int(),
  /** Those that a syringe on hand measures within 10 %. */
  measurable: z.number().int(),
  /** Those whose interval passes the ceiling. */
  crossing: z.number().int(),
  /** The widest half-interval (k = 2) as a share of the target; `null` where nothing is measurable. */
  worst: z.number().nullable(),
  /** Draws for each animal, on average. */
  draws: z.number(),
  neededMl: z.number(),
  jugs: z.number().int(),
  /** What tells the first choice from its runner-up, and each other one from the first; `null` for a lone one. */
  reason: z.enum(['measurable', 'ceiling', 'interval', 'draws', 'jugs', 'printed', 'own']).nullable(),
});
/** A volume for a packet, with how it would serve the herd. */
export type DilutionView = z.infer<typeof DilutionView>;

/** The recipe of the jug being mixed; masses as the scale shows them, in grams. */
export const PlanView = z.strictObject({
  medicine: z.string(),
  packetId: z.string(),
  mode: MixModeView,
  amount: PowderAmountView,
  celsius: z.number(),
  /** The volume as it is named: made up to, or added to. */
  namedVolumeMl: z.number(),
  finalVolumeMl: z.number(),
  powderVolumeMl: z.number(),
  waterGrams: z.number(),
  powderGrams: z.number(),
  strengthMgPerMl: z.number(),
});
/** The recipe of the jug being mixed. */
export type PlanView = z.infer<typeof PlanView>;

/** An empty jug of the farm. */
export const VesselView = z.strictObject({ id: z.string(), letter: z.string(), emptyGrams: z.number() });
/** An empty jug of the farm. */
export type VesselView = z.infer<typeof VesselView>;

/** Why what stands on the bench is not taken for a known empty jug. */
export const VesselDoubtView = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('first') }),
  z.strictObject({ kind: z.literal('heavier'), than: VesselView, byGrams: z.number() }),
  z.strictObject({ kind: z.literal('lighter'), than: VesselView, byGrams: z.number() }),
  z.strictObject({ kind: z.literal('holds-mix'), number: z.number().int() }),
]);
/** Why what stands on the bench is not taken for a known empty jug. */
export type VesselDoubtView = z.infer<typeof VesselDoubtView>;

/** A live pour against its target. */
export const PourView = z.strictObject({
  advice: z.enum(['pour', 'slow', 'stop', 'over', 'jug-lifted', 'scale-moved', 'scale-tared']),
  /** Water in the jug now; `null` while the bench shows nothing current. */
  nowGrams: z.number().nullable(),
  targetGrams: z.number(),
  /** Half-width of the band in which the pour is good. */
  bandGrams: z.number(),
  /** Whether the bench is at rest. */
  steady: z.boolean(),
  /** Whether so much is in that only a held press goes on, and the strength it would come to; else `null`. */
  farStrengthMgPerMl: z.number().nullable(),
});
/** A live pour against its target. */
export type PourView = z.infer<typeof PourView>;

/** The jug being mixed, one step at a time. */
export const MixingView = z.discriminatedUnion('step', [
  z.strictObject({ step: z.literal('idle') }),
  /** Which lot of the stock the packet is of: the lots of the state with this presentation. */
  z.strictObject({ step: z.literal('lot'), packetId: z.string(), medicine: z.string() }),
  z.strictObject({
    step: z.literal('dilution'),
    packetId: z.string(),
    medicine: z.string(),
    amount: PowderAmountView,
    mode: MixModeView,
    /** Best for this herd and these syringes first. */
    choices: z.array(DilutionView),
    /** A volume the keeper entered; `far` where only a held press takes it. */
    own: z.strictObject({ choice: DilutionView, far: z.boolean() }).nullable(),
  }),
  z.strictObject({ step: z.literal('water'), packetId: z.string() }),
  z.strictObject({
    step: z.literal('place'),
    plan: PlanView,
    /** On the bench now; `null` while it shows nothing current. */
    nowGrams: z.number().nullable(),
    steady: z.boolean(),
    vessels: z.array(VesselView),
    /** The letter of the known empty jug that stands there; `null` while none does. */
    standsLike: z.string().nullable(),
  }),
  z.strictObject({
    step: z.literal('new-jug'),
    plan: PlanView,
    nowGrams: z.number().nullable(),
    steady: z.boolean(),
    doubt: VesselDoubtView,
    /** The letter a new jug would wear. */
    letter: z.string(),
    vessels: z.array(VesselView),
  }),
  z.strictObject({ step: z.literal('pour'), plan: PlanView, letter: z.string(), pour: PourView }),
  z.strictObject({
    step: z.literal('powder'),
    plan: PlanView,
    /** What the scale gained since the water; `null` while it shows nothing current. */
    riseGrams: z.number().nullable(),
    verdict: z.enum(['none', 'whole', 'part', 'too-much', 'jug-lifted', 'jug-changed']),
    strengthMgPerMl: z.number(),
    /** Whether the powder that is in is so far from the plan that only a held press takes it. */
    farOff: z.boolean(),
  }),
  z.strictObject({ step: z.literal('dissolve'), plan: PlanView, strengthMgPerMl: z.number() }),
  z.strictObject({
    step: z.literal('label'),
    jug: JugView,
    handling: z.array(z.string()),
  }),
]);
/** The jug being mixed. */
export type MixingView = z.infer<typeof MixingView>;

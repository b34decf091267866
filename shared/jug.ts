import { z } from 'zod';

/** A mixed jug. */
export const JugView = z.strictObject({
  id: z.string(),
  number: z.number().int(),
  medicine: z.string(),
  active: z.string(),
  strengthMgPerMl: z.number(),
  /** Standard uncertainty of the strength as a share of it (k = 1). */
  strengthUncertainty: z.number(),
  volumeMl: z.number(),
  remainingMl: z.number(),
  /** RFC 3339. */
  mixedAt: z.string(),
  /** RFC 3339. */
  useBy: z.string(),
  by: z.string(),
  life: z.enum(['in-life', 'past-use-by', 'empty', 'discarded']),
});
/** A mixed jug. */
export type JugView = z.infer<typeof JugView>;

/** The recipe of the jug being mixed; masses as the scale shows them, in grams. */
export const PlanView = z.strictObject({
  medicine: z.string(),
  packetId: z.string(),
  mode: z.literal('make-up-to'),
  celsius: z.number(),
  finalVolumeMl: z.number(),
  powderVolumeMl: z.number(),
  waterGrams: z.number(),
  powderGrams: z.number(),
  strengthMgPerMl: z.number(),
});
/** The recipe of the jug being mixed. */
export type PlanView = z.infer<typeof PlanView>;

/** A live pour against its target. */
export const PourView = z.strictObject({
  advice: z.enum(['pour', 'slow', 'stop', 'over', 'jug-lifted']),
  /** Water in the jug now; `null` while the bench shows nothing current. */
  nowGrams: z.number().nullable(),
  targetGrams: z.number(),
  /** Half-width of the band in which the pour is good. */
  bandGrams: z.number(),
  /** Whether the bench is at rest. */
  steady: z.boolean(),
});
/** A live pour against its target. */
export type PourView = z.infer<typeof PourView>;

/** The jug being mixed, one step at a time. */
export const MixingView = z.discriminatedUnion('step', [
  z.strictObject({ step: z.literal('idle') }),
  z.strictObject({ step: z.literal('water'), packetId: z.string() }),
  z.strictObject({
    step: z.literal('place'),
    plan: PlanView,
    /** On the bench now; `null` while it shows nothing current. */
    nowGrams: z.number().nullable(),
    steady: z.boolean(),
  }),
  z.strictObject({ step: z.literal('pour'), plan: PlanView, pour: PourView }),
  z.strictObject({
    step: z.literal('powder'),
    plan: PlanView,
    /** What the scale gained since the water; `null` while it shows nothing current. */
    riseGrams: z.number().nullable(),
    verdict: z.enum(['none', 'whole', 'part', 'too-much', 'jug-lifted', 'jug-changed']),
    strengthMgPerMl: z.number(),
  }),
  z.strictObject({ step: z.literal('dissolve'), plan: PlanView, strengthMgPerMl: z.number() }),
  z.strictObject({ step: z.literal('label'), jug: JugView, handling: z.array(z.string()) }),
]);
/** The jug being mixed. */
export type MixingView = z.infer<typeof MixingView>;

import { z } from 'zod';
import { CAUTION_CODES } from '../core/dosing/cautions.ts';
import { TECHNIQUES } from '../core/medicine/care.ts';
import { Species } from './animal.ts';

/** One reason to hesitate, with the numbers its words need. */
export const CautionView = z.strictObject({
  code: z.enum(CAUTION_CODES),
  strength: z.enum(['stop', 'ask', 'note']),
  values: z.record(z.string(), z.number()),
});
/** One reason to hesitate. */
export type CautionView = z.infer<typeof CautionView>;

/** When meat or milk may be used again; unknown is never zero. `at` is RFC 3339. */
export const ClearView = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('at'), at: z.string() }),
  z.strictObject({ kind: z.literal('not-for-people') }),
  z.strictObject({ kind: z.literal('unknown') }),
]);
/** When meat or milk may be used again. */
export type ClearView = z.infer<typeof ClearView>;

/** A syringe: capacity and the step between its marks, in mL. */
export const SyringeView = z.strictObject({
  id: z.string(),
  name: z.string(),
  capacityMl: z.number(),
  graduationMl: z.number(),
});
/** A syringe. */
export type SyringeView = z.infer<typeof SyringeView>;

/** A measured dose: what an offer shows and a treatment logs, every number of it the same. */
const measured = {
  /** Id of the animal. */
  animal: z.string(),
  animalName: z.string(),
  species: Species,
  /** Name of the active. */
  active: z.string(),
  jugId: z.string(),
  jugNumber: z.number(),
  /** Rounded once, to the syringe's mark. */
  volumeMl: z.number().positive(),
  /** Weight times rate over strength, unrounded. */
  exactVolumeMl: z.number().positive(),
  /** Id of the syringe. */
  syringe: z.string(),
  syringeName: z.string(),
  syringeCapacityMl: z.number().positive(),
  syringeGraduationMl: z.number().positive(),
  /** How many times to draw. */
  draws: z.number().int().positive(),
  /** The mark of each draw, largest first, in mL; they add to `volumeMl`. */
  marksMl: z.array(z.number().positive()),
  strengthMgPerMl: z.number().positive(),
  targetMgPerKg: z.number().positive(),
  /** What the measured volume delivers, with its interval at k = 2. */
  deliveredMgPerKg: z.strictObject({ value: z.number(), low: z.number(), high: z.number() }),
  /** How much of the doubt each cause is to blame for; shares add to 1. */
  shares: z.array(z.strictObject({ of: z.string(), share: z.number() })),
  weightGrams: z.number().positive(),
  /** Standard uncertainty of the weight (k = 1). */
  weightUncertaintyGrams: z.number().nonnegative(),
  /** RFC 3339. */
  weighedAt: z.string(),
  /** How the jug was proved to be the one in hand; `null` in records from before that was kept. */
  proof: z.enum(['bench', 'held', 'tap']).nullable(),
  route: z.enum(['oral drench', 'under the skin', 'into the muscle', 'as the vet directs']),
};

/** A dose held out to be given. */
export const OfferView = z.strictObject({
  id: z.string(),
  ...measured,
  agitate: z.enum(['swirl', 'shake']),
  /** How it is given: a way the screen has words for, or a line of the formulary. */
  technique: z.strictObject({ how: z.enum(TECHNIQUES), text: z.string() }),
  cautions: z.array(CautionView),
  /** RFC 3339. */
  expiresAt: z.string(),
});
/** A dose held out to be given. */
export type OfferView = z.infer<typeof OfferView>;

/** How long a veterinarian said to keep meat or milk back. */
export const VetTimeView = z.strictObject({ unit: z.enum(['hours', 'days']), count: z.number() });

/** A correction standing beside a treatment. */
export const CorrectionView = z.strictObject({
  id: z.string(),
  kind: z.enum(['not-given', 'wrong-animal', 'wrong-volume', 'vet-time']),
  animal: z.string().nullable(),
  animalName: z.string().nullable(),
  volumeMl: z.number().nullable(),
  /** What the veterinarian gave, with `vet-time`; `null` where nothing. */
  meat: VetTimeView.nullable(),
  milk: VetTimeView.nullable(),
  at: z.string(),
  by: z.string(),
});
/** A correction standing beside a treatment. */
export type CorrectionView = z.infer<typeof CorrectionView>;

/** One row of the day book. */
export const TreatmentView = z.strictObject({
  id: z.string(),
  /** Counted up by one for each treatment on this kiosk. */
  sequence: z.number().int(),
  offerId: z.string(),
  ...measured,
  outcome: z.enum(['whole', 'part', 'spat-out']),
  /** What of a part dose stayed in the syringe, where that is known. */
  leftMl: z.number().nullable(),
  /** What a group's dose rests on; `null` for a dose by a weight held in its visit. `weightGrams` is then its last one. */
  group: z
    .strictObject({
      heaviestName: z.string(),
      heaviestGrams: z.number().positive(),
      /** RFC 3339. */
      weighedAt: z.string(),
      members: z.number().int().positive(),
    })
    .nullable(),
  /** RFC 3339. */
  givenAt: z.string(),
  /** Whether the clock was not trusted, so that `givenAt` and the clear times are provisional. */
  provisional: z.boolean(),
  by: z.string(),
  /** Logged by its volume read back aloud, not by a press. */
  readBack: z.boolean(),
  /** Logged only after its offer had ended. */
  late: z.boolean(),
  direction: z.enum(['label', 'veterinarian']),
  /** The number of the medicine's lot, and when the month printed on it is over (RFC 3339); `null` where not told. */
  stock: z.strictObject({ lot: z.string().nullable(), expiresAt: z.string() }).nullable(),
  meatClear: ClearView,
  milkClear: ClearView,
  acceptedCautions: z.array(CautionView),
  corrections: z.array(CorrectionView),
});
/** One row of the day book. */
export type TreatmentView = z.infer<typeof TreatmentView>;

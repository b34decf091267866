import { z } from 'zod';
import type { EnteredLiquid, EnteredPacket } from '../core/formulary/entered-presentation.ts';
import type { EnteredRule, EnteredTime } from '../core/formulary/entered-rule.ts';
import { Species } from './animal.ts';
import { intentId as id, ref } from './refs.ts';

const rate = z.number().positive().max(1000);
const days = z.number().int().positive().max(3650);
const grams = z.number().positive().max(10_000);
const milligramsPerMl = z.number().positive().max(2000);

/** A packet as its label is read off; what the label does not print is `null`. */
export const EnteredPacketView = z.strictObject({
  form: z.literal('powder'),
  grossGrams: grams,
  activeGrams: grams,
  madeUpTo: z.strictObject({
    amount: z.number().positive().max(100_000),
    unit: z.enum(['mL', 'L', 'US quart', 'US gallon', 'US fl oz']),
  }),
  printedMgPerMl: milligramsPerMl.nullable(),
  jugLifeHours: z
    .number()
    .positive()
    .max(24 * 365)
    .nullable(),
}) satisfies z.ZodType<EnteredPacket>;

/** A ready liquid as its label is read off: mg/mL, percent, or both. */
export const EnteredLiquidView = z.strictObject({
  form: z.literal('liquid'),
  mgPerMl: milligramsPerMl.nullable(),
  percent: z.number().positive().max(100).nullable(),
  bottleMl: z.number().positive().max(20_000),
  openLifeDays: days.nullable(),
}) satisfies z.ZodType<EnteredLiquid>;

/** How long meat or milk is kept back; no time at all is refused with its reason. */
export const EnteredTimeView = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('hours'),
    hours: z
      .number()
      .int()
      .min(0)
      .max(24 * 365),
  }),
  z.strictObject({ kind: z.literal('days'), days: z.number().int().min(0).max(365) }),
  z.strictObject({ kind: z.literal('not-for-people') }),
  z.strictObject({ kind: z.literal('unknown') }),
]) satisfies z.ZodType<EnteredTime>;

/** A rule as a label or a veterinarian gives it; what neither says is `null`. */
export const EnteredRuleView = z.strictObject({
  species: Species,
  use: z.enum(['label', 'extra-label']),
  presentationId: ref.nullable(),
  route: z.enum(['oral drench', 'under the skin', 'into the muscle', 'as the vet directs']),
  mgPerKg: rate.nullable(),
  mgPerLb: rate.nullable(),
  ceiling: rate.nullable(),
  floor: rate.nullable(),
  repeatDays: days.nullable(),
  meat: EnteredTimeView,
  milk: EnteredTimeView,
  minAgeDays: days.nullable(),
  minWeightKg: z.number().positive().max(2000).nullable(),
  pregnancy: z.strictObject({ afterBredDays: days, afterMalesDays: days }).nullable(),
  milkers: z.enum(['all-may', 'not-in-milk', 'not-dairy']),
}) satisfies z.ZodType<EnteredRule>;

/** What a person can want of the farm's own medicines. */
export const OWN_MEDICINE_INTENTS = [
  z.strictObject({
    type: z.literal('keep-presentation'),
    id,
    medicineId: ref,
    presentation: z.discriminatedUnion('form', [EnteredPacketView, EnteredLiquidView]),
  }),
  z.strictObject({ type: z.literal('keep-rule'), id, medicineId: ref, rule: EnteredRuleView }),
  /** Takes a presentation or a rule of the farm's own out of use; it stays on record. */
  z.strictObject({ type: z.literal('retire-own'), id, ownId: ref }),
] as const;

/** What a medicine is sold as. */
export const PresentationView = z.strictObject({
  id: z.string(),
  form: z.enum(['powder', 'liquid']),
  /** All of a packet, in grams; `null` for a liquid. */
  grossGrams: z.number().nullable(),
  /** The active in a packet, in grams; `null` for a liquid. */
  activeGrams: z.number().nullable(),
  /** Of a packet made up as its label says, or of the liquid. */
  strengthMgPerMl: z.number(),
  /** Whether the farm added it. */
  own: z.boolean(),
});
/** What a medicine is sold as. */
export type PresentationView = z.infer<typeof PresentationView>;

/** A medicine to which the farm can add packets, bottles and rules. */
export const MedicineView = z.strictObject({
  id: z.string(),
  name: z.string(),
  presentations: z.array(PresentationView),
  /** The rules of the farm's own by their ids; each stands among the regimens. */
  ownRules: z.array(z.string()),
});
/** A medicine to which the farm can add packets, bottles and rules. */
export type MedicineView = z.infer<typeof MedicineView>;

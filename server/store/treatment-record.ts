import { z } from 'zod';
import { CAUTION_CODES } from '../../core/dosing/cautions.ts';
import { Regimen } from '../../core/medicine/formulary.ts';
import type { Treatment } from '../../core/round/treatment.ts';
import { AnimalClass, Species } from '../../shared/animal.ts';
import { StoredMeasure, storedQuantity } from './stored-quantity.ts';

const mass = storedQuantity('g');
const volume = storedQuantity('mL');
const ms = z.number();

const Caution = z.strictObject({
  code: z.enum(CAUTION_CODES),
  strength: z.enum(['stop', 'ask', 'note']),
  values: z.record(z.string(), z.number()),
});

const Clear = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('at'), atMs: ms }),
  z.strictObject({ kind: z.literal('not-for-people') }),
  z.strictObject({ kind: z.literal('unknown') }),
]);

const Animal = z.strictObject({
  id: z.string(),
  name: z.string(),
  species: Species,
  class: AnimalClass,
  tag: z.string().nullable(),
  inMilk: z.boolean(),
  bredAtMs: ms.nullable(),
  lastWeight: z.strictObject({ mass, atMs: ms }).nullable(),
});

const Jug = z.strictObject({
  id: z.string(),
  number: z.int(),
  medicineId: z.string(),
  packetId: z.string(),
  strength: storedQuantity('mg/mL'),
  relative: z.number(),
  volume,
  mixedAtMs: ms,
  useByMs: ms,
  by: z.string(),
  clockTrusted: z.boolean(),
  discardedAtMs: ms.nullable(),
  drawn: volume,
});

const Dose = z.strictObject({
  exact: volume,
  plan: z.strictObject({
    syringe: z.strictObject({
      id: z.string(),
      name: z.string(),
      capacity: volume,
      graduation: volume,
      // Rows written before syringes could be checked do not name it.
      measured: StoredMeasure.nullable().default(null),
    }),
    draws: z.array(volume),
    total: volume,
    relative: z.number(),
    rounding: z.number(),
  }),
  delivered: z.strictObject({ value: z.number(), low: z.number(), high: z.number() }),
  budget: z.strictObject({
    relative: z.number(),
    contributions: z.array(z.strictObject({ of: z.string(), relative: z.number() })),
    shares: z.array(z.number()),
  }),
});

const Offer = z.strictObject({
  id: z.string(),
  animal: Animal,
  jug: Jug,
  regimen: Regimen,
  approval: z.strictObject({
    regimenId: z.string(),
    by: z.string(),
    direction: z.enum(['label', 'veterinarian']),
    atMs: ms,
    meatHours: z.number().nullable(),
    milkHours: z.number().nullable(),
  }),
  weight: z.strictObject({
    held: z.strictObject({ mass, uncertainty: mass, at: ms, changedFrom: mass.nullable() }),
    atMs: ms,
  }),
  dose: Dose,
  cautions: z.array(Caution),
  accepted: z.array(Caution),
  expiresAtUptimeMs: ms,
  expiresAtMs: ms,
});

/**
 * A treatment as it stands on disk: everything that was shown when it was given, so that each figure can be traced
 * years later without the program that made it.
 */
export const TreatmentRecord = z.strictObject({
  id: z.string(),
  offer: Offer,
  outcome: z.enum(['whole', 'part', 'spat-out']),
  givenAtMs: ms,
  clockTrusted: z.boolean(),
  by: z.string(),
  late: z.boolean(),
  meat: Clear,
  milk: Clear,
  accepted: z.array(Caution),
}) satisfies z.ZodType<Treatment>;

import { z } from 'zod';
import { CAUTION_CODES } from '../../core/dosing/cautions.ts';
import type { Approval } from '../../core/medicine/approval.ts';
import type { Treatment } from '../../core/round/treatment.ts';
import { AnimalClass, Species } from '../../shared/animal.ts';
import { StoredJugLot, StoredMeasure, StoredWeighed, storedQuantity } from './stored-quantity.ts';
import { StoredRegimen } from './stored-regimen.ts';

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
  bornAtMs: ms.nullable().default(null),
  bredAtMs: ms.nullable(),
  malesRemovedAtMs: ms.nullable().default(null),
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
  // Rows written before jugs were known by their weight, or by their lot, do not name these.
  weighed: StoredWeighed.nullable().default(null),
  stock: StoredJugLot.nullable().default(null),
  drawn: volume,
  drawnDoubt: volume.default({ unit: 'mL', value: 0 }),
  draws: z.int().default(0),
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

const direction = z.enum(['label', 'veterinarian']);
const VetTime = z.strictObject({ unit: z.enum(['hours', 'days']), count: z.number() }).nullable();

const ApprovalNow = z.strictObject({
  regimenId: z.string(),
  figures: z.string().nullable(),
  by: z.string(),
  direction,
  vet: z.string().nullable(),
  atMs: ms,
  targetMgPerKg: z.number().nullable(),
  meat: VetTime,
  milk: VetTime,
});

/** An approval in rows written before a veterinarian could give days or a rate. */
const ApprovalBefore = z
  .strictObject({
    regimenId: z.string(),
    by: z.string(),
    direction,
    atMs: ms,
    meatHours: z.number().nullable(),
    milkHours: z.number().nullable(),
  })
  .transform(({ meatHours, milkHours, ...approval }): Approval => {
    const hours = (count: number | null) => (count === null ? null : { unit: 'hours' as const, count });
    return {
      ...approval,
      figures: null,
      vet: null,
      targetMgPerKg: null,
      meat: hours(meatHours),
      milk: hours(milkHours),
    };
  });

const GroupBasis = z.strictObject({
  heaviestId: z.string(),
  heaviestName: z.string(),
  heaviest: mass,
  weighedAtMs: ms,
  members: z.int(),
});

const Proof = z.strictObject({ how: z.enum(['bench', 'held', 'tap']), atMs: ms, told: z.array(Caution) });

const Offer = z.strictObject({
  id: z.string(),
  animal: Animal,
  jug: Jug,
  regimen: StoredRegimen,
  approval: z.union([ApprovalNow, ApprovalBefore]),
  weight: z.strictObject({
    held: z.strictObject({ mass, uncertainty: mass, at: ms, changedFrom: mass.nullable() }),
    atMs: ms,
  }),
  // Rows written before it was kept do not name it.
  proof: Proof.nullable().default(null),
  group: GroupBasis.nullable().default(null),
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
  left: volume.nullable().default(null),
  givenAtMs: ms,
  clockTrusted: z.boolean(),
  // Rows written before the running time of the board was kept do not name it.
  board: z.strictObject({ start: z.string(), sinceMs: ms }).nullable().default(null),
  by: z.string(),
  // Rows written before the kiosk could hear do not name it.
  readBack: z.boolean().default(false),
  late: z.boolean(),
  meat: Clear,
  milk: Clear,
  accepted: z.array(Caution),
}) satisfies z.ZodType<Treatment>;

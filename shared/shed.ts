import { z } from 'zod';
import { Species } from './animal.ts';
import { ScaleChecksView } from './check.ts';
import { SyringeView } from './dose.ts';
import { MedicineView } from './own-medicine.ts';
import { SetupView } from './setup.ts';
import { SyringeCheckRecordView } from './syringe-check.ts';
import { DeviceRole } from './tray.ts';

/** Where a link stands. Only `ready` shows a number. */
export const LinkStatus = z.enum(['absent', 'opening', 'settling', 'ready', 'silent', 'lost']);
/** Where a link stands. */
export type LinkStatus = z.infer<typeof LinkStatus>;

/** A device as the Shed shows it. */
export const DeviceView = z.strictObject({
  role: DeviceRole,
  link: LinkStatus,
  /** Device file, or `null` where the role is not configured. */
  path: z.string().nullable(),
  profile: z.string().nullable(),
  baud: z.number().nullable(),
  /** What a scale carries and the step it counts in, in grams; `null` for what nobody has told, and for a wand. */
  capacityGrams: z.number().nullable(),
  divisionGrams: z.number().nullable(),
  /** Whether the kiosk can ask it for zero. */
  zeroable: z.boolean(),
  /** Why it is lost and what to do, in a sentence; `null` while all is well. */
  trouble: z.string().nullable(),
  counters: z.strictObject({
    opens: z.number().int(),
    losses: z.number().int(),
    frames: z.number().int(),
    badFrames: z.number().int(),
    discardedBytes: z.number().int(),
  }),
});
/** A device as the Shed shows it. */
export type DeviceView = z.infer<typeof DeviceView>;

/** A figure of a regimen with where it comes from. */
export const FigureView = z.strictObject({
  label: z.enum([
    'target',
    'ceiling',
    'floor',
    'repeat',
    'min-age',
    'min-weight',
    'bred',
    'males',
    'meat',
    'milk',
  ]),
  /** `null` where not known. */
  value: z.number().nullable(),
  unit: z.enum(['mg/kg', 'days', 'hours', 'kg']),
  evidence: z.enum([
    'primary',
    'secondary',
    'own-guard',
    'estimate',
    'entered',
    'directed',
    'not-known',
    'not-for-people',
  ]),
  source: z.string(),
});
/** A figure of a regimen with where it comes from. */
export type FigureView = z.infer<typeof FigureView>;

/** A regimen and whether this farm may use it. */
export const RegimenView = z.strictObject({
  id: z.string(),
  medicine: z.string(),
  active: z.string(),
  species: Species,
  use: z.enum(['label', 'extra-label']),
  figures: z.array(FigureView),
  /** Which animals it leaves out, and what else the keeper must know, one line each with its source. */
  notes: z.array(z.strictObject({ text: z.string(), source: z.string() })),
  /** What it is for where it is for one thing only. */
  purpose: z.string().nullable(),
  approval: z
    .strictObject({
      by: z.string(),
      direction: z.enum(['label', 'veterinarian']),
      /** RFC 3339. */
      at: z.string(),
      /** The veterinarian on whose word; `null` where not named. */
      vet: z.string().nullable(),
      /** The rate the veterinarian gave; `null` where the rule has its own. */
      targetMgPerKg: z.number().nullable(),
      meatHours: z.number().nullable(),
      milkHours: z.number().nullable(),
      meatDays: z.number().nullable(),
      milkDays: z.number().nullable(),
    })
    .nullable(),
});
/** A regimen and whether this farm may use it. */
export type RegimenView = z.infer<typeof RegimenView>;

/** A packet that can be mixed. */
export const PacketView = z.strictObject({
  id: z.string(),
  medicine: z.string(),
  active: z.string(),
  grossGrams: z.number(),
  activeGrams: z.number(),
  madeUpToMl: z.number(),
  handling: z.array(z.string()),
});
/** A packet that can be mixed. */
export type PacketView = z.infer<typeof PacketView>;

/** A liquid that is dosed as it comes. */
export const LiquidView = z.strictObject({
  id: z.string(),
  medicine: z.string(),
  active: z.string(),
  strengthMgPerMl: z.number(),
  /** Sizes to pick from. */
  bottlesMl: z.array(z.number()),
  openLifeDays: z.number(),
});
/** A liquid that is dosed as it comes. */
export type LiquidView = z.infer<typeof LiquidView>;

/** Everything the Shed screen shows. */
export const ShedView = z.strictObject({
  devices: z.array(DeviceView),
  /** The setting up of a device that is under way. */
  setup: SetupView,
  syringes: z.array(
    SyringeView.extend({
      onHand: z.boolean(),
      /** Its last check by weighing; `null` where it was never checked. */
      check: SyringeCheckRecordView.nullable(),
    }),
  ),
  checks: z.strictObject({
    platform: ScaleChecksView,
    bench: ScaleChecksView,
    /** How many days a passed check is good for. */
    everyDays: z.number().int().positive(),
    /** Whether a failed or long overdue check of the platform stops a dose instead of asking. */
    stops: z.boolean(),
  }),
  regimens: z.array(RegimenView),
  /** Every medicine, with what the farm added to it. */
  medicines: z.array(MedicineView),
  /** The veterinarians named in approvals, the latest first. */
  vets: z.array(z.string()),
  /** What of the farm's own medicines was left out and what to do, a sentence each. */
  formularyTrouble: z.array(z.string()),
  packets: z.array(PacketView),
  liquids: z.array(LiquidView),
  people: z.array(z.string()),
  person: z.string(),
  /** A tag that belongs to no animal, read within the last minute; `null` where there is none. */
  unknownTag: z.string().nullable(),
  /** Ids of the animals that lost this tag once. */
  unknownTagOf: z.array(z.string()),
});
/** Everything the Shed screen shows. */
export type ShedView = z.infer<typeof ShedView>;

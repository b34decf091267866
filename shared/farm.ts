import { z } from 'zod';
import { intentId as id } from './refs.ts';

/** One of two doses an animal got at kiosks that did not know of each other. */
const ApartDose = z.strictObject({
  treatmentId: z.string(),
  /** RFC 3339. */
  givenAt: z.string(),
  by: z.string(),
  volumeMl: z.number(),
  /** The mark of the syringe it was drawn to. */
  graduationMl: z.number(),
  /** Whether it was logged at this kiosk. */
  here: z.boolean(),
  /** What the kiosk it was logged at is called; `null` where nobody told. */
  kiosk: z.string().nullable(),
});

/** An animal that was dosed at two kiosks, until somebody has read it here. */
export const ApartView = z.strictObject({
  animalId: z.string(),
  animalName: z.string(),
  /** Name of the active. */
  active: z.string(),
  doses: z.tuple([ApartDose, ApartDose]),
});
/** An animal that was dosed at two kiosks. */
export type ApartView = z.infer<typeof ApartView>;

/** The other kiosks of the farm as this one knows of them. */
export const FarmView = z.strictObject({
  /** Animals dosed at two kiosks, the oldest alarm first. */
  apart: z.array(ApartView),
  /** Whether the herd is shared: never in a demo, not yet, through a hub, or by a file that cannot be read. */
  sharing: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('demo') }),
    z.strictObject({
      kind: z.literal('none'),
      /** The invitation that lies on a stick now, or why it cannot be read. */
      invitation: z
        .union([z.strictObject({ name: z.string(), hub: z.string() }), z.strictObject({ why: z.string() })])
        .nullable(),
    }),
    z.strictObject({ kind: z.literal('unreadable'), why: z.string() }),
    z.strictObject({
      kind: z.literal('hub'),
      /** What this kiosk is called on the farm. */
      name: z.string(),
      hub: z.string(),
      /** The other kiosks by name. */
      others: z.array(z.string()),
      /** When the last exchange went well, RFC 3339; `null` where none did since the start. */
      lastAt: z.string().nullable(),
      trouble: z.enum(['unreachable', 'shut-out', 'failing']).nullable(),
      /** What went wrong, for a person to look up. */
      detail: z.string().nullable(),
      /** Records the hub does not hold yet; `null` before it was asked. */
      toPush: z.number().int().nullable(),
      /** Records that came and cannot be taken in yet. */
      waiting: z.number().int(),
    }),
  ]),
});
/** The other kiosks of the farm as this one knows of them. */
export type FarmView = z.infer<typeof FarmView>;

/** What a farm may say to an office: that it reads the farm, or no more. */
export const OfficeSaid = z.strictObject({ office: z.string().max(64), reads: z.boolean() });
/** What a farm says to an office. */
export type OfficeSaid = z.infer<typeof OfficeSaid>;

/** An office of the hub as the farm is told of it. */
export const OfficeView = z.strictObject({
  office: z.string(),
  name: z.string(),
  /** It asks to read the farm, reads it, or was shut out. */
  state: z.enum(['asks', 'reads', 'shut-out']),
  /** Since when it is so, RFC 3339. */
  since: z.string(),
});
/** An office of the hub as the farm is told of it. */
export type OfficeView = z.infer<typeof OfficeView>;

/** The answer of `GET` and `POST /api/farm/offices`: those that ask come first. */
export const OfficesView = z.strictObject({ offices: z.array(OfficeView) });
/** The offices of the hub that the farm is told of. */
export type OfficesView = z.infer<typeof OfficesView>;

/** What a person wants of the sharing of the herd. */
export const FARM_INTENTS = [
  /** Shares the herd by the invitation on the stick: the kiosk starts anew. */
  z.strictObject({ type: z.literal('join-farm'), id }),
  /** Shares the herd no more: the kiosk starts anew, and keeps what came. */
  z.strictObject({ type: z.literal('leave-farm'), id }),
  /** Somebody read that an animal was dosed at two kiosks, by the ids of both treatments. */
  z.strictObject({ type: z.literal('read-apart'), id, one: z.string(), other: z.string() }),
] as const;

import { z } from 'zod';
import { PowderAmountView } from './mixing.ts';
import { intentId as id, ref } from './refs.ts';
import { ExpiryMonth } from './stock.ts';

/** What a person wants while a jug is mixed, and of jugs and bottles in use. */
export const MIXING_INTENTS = [
  z.strictObject({ type: z.literal('mix-start'), id, packetId: ref }),
  /** Whole packets, or a share of one that is weighed in; the volume goes with it. */
  z.strictObject({ type: z.literal('mix-amount'), id, amount: PowderAmountView }),
  z.strictObject({ type: z.literal('mix-mode'), id, mode: z.enum(['make-up-to', 'add-to']) }),
  /** The volume for one packet. `deliberate` is a held press: needed far from the packet's own volume. */
  z.strictObject({
    type: z.literal('mix-dilution'),
    id,
    perPacketMl: z.number().positive().max(100_000),
    deliberate: z.boolean(),
  }),
  /** Works out one more volume for each packet, of the keeper's own: what it would mean for herd and syringes. */
  z.strictObject({ type: z.literal('mix-look'), id, perPacketMl: z.number().positive().max(100_000) }),
  z.strictObject({ type: z.literal('mix-water'), id, celsius: z.number().min(1).max(40) }),
  z.strictObject({ type: z.literal('mix-jug-placed'), id }),
  /** The keeper looked in: the jug on the bench is empty. A new one, or a known one weighed anew. */
  z.strictObject({
    type: z.literal('mix-jug-is-empty'),
    id,
    vesselId: ref.nullable(),
    deliberate: z.boolean(),
  }),
  /** `deliberate` is a held press: needed where far too much water went in. */
  z.strictObject({ type: z.literal('mix-poured'), id, deliberate: z.boolean().optional() }),
  /** The part of a packet that was weighed in is in. */
  z.strictObject({ type: z.literal('mix-powder-in'), id, deliberate: z.boolean() }),
  z.strictObject({ type: z.literal('mix-dissolved'), id }),
  z.strictObject({ type: z.literal('mix-in-service'), id }),
  z.strictObject({ type: z.literal('mix-cancel'), id }),
  /** Puts a ready-made liquid in use beside the jugs; `expiry` is the last month printed on it. */
  z.strictObject({
    type: z.literal('open-bottle'),
    id,
    presentationId: ref,
    volumeMl: z.number().positive().max(20_000),
    expiry: ExpiryMonth,
    /** The lot of the stock it is taken from. */
    lotId: ref.nullable().optional(),
  }),
  z.strictObject({ type: z.literal('jug-discard'), id, jugId: ref }),
] as const;

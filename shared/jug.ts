import { z } from 'zod';
import { KEEPINGS } from '../core/medicine/care.ts';
import { Evidence } from '../core/medicine/figure.ts';
import { CautionView } from './dose.ts';

/** How a medicine is kept: a way the screen has words for, or a line of the formulary. */
export const KeepingView = z.strictObject({ keep: z.enum(KEEPINGS), text: z.string() });
/** How a medicine is kept. */
export type KeepingView = z.infer<typeof KeepingView>;

/** A mixed jug, or a bottle of a liquid that is dosed as it comes: of that, `mixedAt` is when it was opened. */
export const JugView = z.strictObject({
  id: z.string(),
  form: z.enum(['jug', 'bottle']),
  number: z.number().int(),
  medicine: z.string(),
  active: z.string(),
  strengthMgPerMl: z.number(),
  /** Standard uncertainty of the strength as a share of it (k = 1). */
  strengthUncertainty: z.number(),
  volumeMl: z.number(),
  remainingMl: z.number(),
  /** The letter of the jug it was mixed in; `null` where that is not known. */
  letter: z.string().nullable(),
  /** What it should weigh now, gross, with what is left; `null` where its empty mass was never learned. */
  expectedGrams: z.number().nullable(),
  /** RFC 3339. */
  mixedAt: z.string(),
  /** RFC 3339. */
  useBy: z.string(),
  /** How long it stays good once mixed or opened, and who says so; `null` where what it came from is known no more. */
  keeps: z
    .strictObject({
      unit: z.enum(['hours', 'days']),
      value: z.number(),
      evidence: Evidence,
      source: z.string(),
      /** Whether the month printed on it ends sooner, so that `useBy` is its end. */
      monthFirst: z.boolean(),
    })
    .nullable(),
  by: z.string(),
  storage: z.array(KeepingView),
  /** Whether it belongs in the refrigerator between rounds. */
  refrigerate: z.boolean(),
  /** What must be known of the medicine before its first dose of a round. */
  notes: z.array(CautionView),
  /** The number of its lot, and when the month printed on it is over (RFC 3339); `null` where not from the stock. */
  stock: z.strictObject({ lot: z.string().nullable(), expiresAt: z.string() }).nullable(),
  life: z.enum(['in-life', 'past-use-by', 'empty', 'discarded']),
});
/** A mixed jug. */
export type JugView = z.infer<typeof JugView>;

import { z } from 'zod';
import { Evidence } from './figure.ts';

const source = z.string().min(8).max(400);

/**
 * How long meat or milk must be kept back: hours counted exactly, days to the same time of day on the farm's clock,
 * never for people, or not known.
 *
 * Only a veterinarian may give nothing; a rule may not.
 */
export const Withdrawal = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('hours'), hours: z.number().nonnegative(), evidence: Evidence, source }),
  z.strictObject({ kind: z.literal('days'), days: z.int().positive(), evidence: Evidence, source }),
  z.strictObject({ kind: z.literal('not-for-people'), source }),
  z.strictObject({ kind: z.literal('unknown'), source }),
]);
/** How long meat or milk must be kept back. */
export type Withdrawal = z.infer<typeof Withdrawal>;

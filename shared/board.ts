import { z } from 'zod';

/** Whether meat or milk of an animal may be used now; unknown is never free. `at` is RFC 3339. */
export const UseView = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('free') }),
  z.strictObject({ kind: z.literal('at'), at: z.string(), provisional: z.boolean(), treatment: z.string() }),
  z.strictObject({ kind: z.literal('not-for-people'), treatment: z.string() }),
  z.strictObject({ kind: z.literal('unknown'), treatment: z.string() }),
]);
/** Whether meat or milk of an animal may be used now. */
export type UseView = z.infer<typeof UseView>;

/** One animal of the board: who may be milked, who may be sold, from when. */
export const BoardRowView = z.strictObject({
  /** Id of the animal. */
  animal: z.string(),
  /** `null` for an animal that gives no milk. */
  milk: UseView.nullable(),
  meat: UseView,
});
/** One animal of the board. */
export type BoardRowView = z.infer<typeof BoardRowView>;

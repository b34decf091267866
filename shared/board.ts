import { z } from 'zod';
import { FigureView } from './shed.ts';

/** What keeps it back: a medicine, from when, for how long, and who says so; `value` is `null` where no time is known. */
export const BecauseView = FigureView.omit({ label: true }).extend({
  medicine: z.string(),
  /** RFC 3339. */
  from: z.string(),
});
/** What keeps it back. */
export type BecauseView = z.infer<typeof BecauseView>;

/** Whether meat or milk of an animal may be used now; unknown is never free. `at` is RFC 3339. */
export const UseView = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('free') }),
  z.strictObject({
    kind: z.literal('at'),
    at: z.string(),
    provisional: z.boolean(),
    treatment: z.string(),
    because: BecauseView,
  }),
  z.strictObject({ kind: z.literal('not-for-people'), treatment: z.string(), because: BecauseView }),
  z.strictObject({ kind: z.literal('unknown'), treatment: z.string(), because: BecauseView }),
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

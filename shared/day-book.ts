import { z } from 'zod';
import { TreatmentView } from './dose.ts';

/** A visit that was skipped, or an offer that ended without a dose. */
export const UntreatedView = z.strictObject({
  id: z.string(),
  kind: z.enum(['skipped', 'lapsed', 'not-given']),
  animal: z.string().nullable(),
  animalName: z.string().nullable(),
  /** Why it was skipped or ended, as a code of the round; `null` where nobody said. */
  reason: z.string().nullable(),
  weightGrams: z.number().positive().nullable(),
  /** RFC 3339. */
  at: z.string(),
  /** Whether the clock was not trusted, so that `at` is provisional. */
  provisional: z.boolean(),
  by: z.string(),
});
/** A visit that was skipped, or an offer that ended without a dose. */
export type UntreatedView = z.infer<typeof UntreatedView>;

/** One line of the day book. */
export const BookLineView = z.discriminatedUnion('line', [
  z.strictObject({ line: z.literal('treatment'), treatment: TreatmentView }),
  z.strictObject({ line: z.literal('untreated'), untreated: UntreatedView }),
]);
/** One line of the day book. */
export type BookLineView = z.infer<typeof BookLineView>;

/** A page of the day book, newest first. */
export const BookPageView = z.strictObject({
  lines: z.array(BookLineView),
  /** What to ask the next page with, as `before`; `null` on the last. */
  next: z.string().nullable(),
});
/** A page of the day book, newest first. */
export type BookPageView = z.infer<typeof BookPageView>;

/** What the day book can be asked by: who and what stands in it. */
export const BookChoicesView = z.strictObject({
  medicines: z.array(z.strictObject({ id: z.string(), name: z.string() })),
  people: z.array(z.string()),
});
/** What the day book can be asked by. */
export type BookChoicesView = z.infer<typeof BookChoicesView>;

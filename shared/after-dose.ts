import { z } from 'zod';

/** What to watch for and do after a dose. */
export const AfterDoseView = z.strictObject({
  /** `null` where no source read gives signs and times. */
  watch: z
    .strictObject({
      firstMinutes: z.number(),
      lastMinutes: z.number(),
      signs: z.string(),
      remedy: z.string(),
      source: z.string(),
    })
    .nullable(),
  /** What else may be due in the same visit, a line each. */
  extras: z.array(z.string()),
  /** Whether jug or bottle belongs in the refrigerator between rounds. */
  refrigerate: z.boolean(),
});
/** What to watch for and do after a dose. */
export type AfterDoseView = z.infer<typeof AfterDoseView>;

import { z } from 'zod';

/** How well what is logged is kept: the disk now, the last whole check of the file, and the copies of it. */
export const KeepingView = z.strictObject({
  /** Why nothing can be logged now; `null` while all is well. */
  disk: z.enum(['full', 'read-only', 'failing']).nullable(),
  /** When the whole file was last found in order, RFC 3339; `null` where it never was looked at. */
  checkedAt: z.string().nullable(),
  backup: z.strictObject({
    /** Folders and sticks a copy goes to now. */
    places: z.array(z.string()),
    running: z.boolean(),
    /** The last copy made, `at` RFC 3339. */
    last: z.strictObject({ at: z.string(), place: z.string() }).nullable(),
    /** Whether the last copy is more than a week old, or there is none. */
    overdue: z.boolean(),
    /** Why the copy tried last was not made. */
    trouble: z.enum(['full', 'gone', 'not-written']).nullable(),
  }),
});
/** How well what is logged is kept. */
export type KeepingView = z.infer<typeof KeepingView>;

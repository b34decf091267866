import { z } from 'zod';

/** The ways a file can be taken along. */
export const ExportsView = z.strictObject({
  /** The folder of the configuration that files are written to, such as a memory stick; `null` where none is set. */
  folder: z.string().nullable(),
  /** Where another device of the farm's network finds this kiosk; `null` where it listens to itself alone. */
  address: z.string().nullable(),
});
/** The ways a file can be taken along. */
export type ExportsView = z.infer<typeof ExportsView>;

/** What became of a file that was to be written to the folder. */
export const ExportWritten = z.discriminatedUnion('ok', [
  z.strictObject({ ok: z.literal(true), file: z.string(), bytes: z.number().int().nonnegative() }),
  z.strictObject({ ok: z.literal(false), why: z.enum(['no-folder', 'not-there', 'full', 'not-written']) }),
]);
/** What became of a file that was to be written to the folder. */
export type ExportWritten = z.infer<typeof ExportWritten>;

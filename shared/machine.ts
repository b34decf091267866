import { z } from 'zod';

/** How the board under the kiosk is, as far as a screen must say it at once. */
export const MachineView = z.strictObject({
  /** The supply of the board: too low now, or since the kiosk started; `unknown` where the board does not tell. */
  supply: z.enum(['good', 'was-low', 'low', 'unknown']),
  /** Whether the board is so hot that it slows down. */
  hot: z.boolean(),
});
/** How the board under the kiosk is. */
export type MachineView = z.infer<typeof MachineView>;

/** What `GET /api/machine` answers: the board and the kiosk on it, now. Bytes, seconds, degrees Celsius. */
export const MachinePage = z.strictObject({
  ...MachineView.shape,
  /** The hottest part that is measured; `null` where none is. */
  celsius: z.number().nullable(),
  /** Where the board begins to slow down; `null` where it does not tell. */
  limitCelsius: z.number().nullable(),
  /** Since the board was switched on. */
  boardSeconds: z.number(),
  /** Since the kiosk's program started. */
  kioskSeconds: z.number(),
  memory: z.strictObject({
    /** What the kiosk's program holds. */
    kiosk: z.number(),
    free: z.number(),
    total: z.number(),
  }),
  disk: z.strictObject({
    /** Room left where the records are; `null` for a kiosk that keeps none. */
    free: z.number().nullable(),
    total: z.number().nullable(),
    /** The file of the records with its log. */
    records: z.number().nullable(),
  }),
  version: z.string(),
  node: z.string(),
});
/** What `GET /api/machine` answers. */
export type MachinePage = z.infer<typeof MachinePage>;

import { z } from 'zod';
import { Figure, Line } from './figure.ts';

/** What to watch for after a dose, and what to do. */
export const Watch = z.strictObject({
  /** Minutes after which first signs were seen. */
  firstMinutes: Figure,
  /** Minutes after which none began any more: how long to stay with the animal. */
  lastMinutes: Figure,
  /** What an overdose looks like. */
  signs: Line,
  /** What to do when it is seen. */
  remedy: Line,
});
/** What to watch for after a dose. */
export type Watch = z.infer<typeof Watch>;

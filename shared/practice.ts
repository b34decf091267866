import { z } from 'zod';
import { intentId as id } from './refs.ts';

/** A round to learn by, on simulated scales: nothing of it is kept. */
export const PRACTICE_INTENTS = [
  /** Begins one: the kiosk starts anew without its devices and records. Refused while work waits. */
  z.strictObject({ type: z.literal('practice-begin'), id }),
  /** Ends it: the kiosk starts anew as it was. */
  z.strictObject({ type: z.literal('practice-end'), id }),
] as const;

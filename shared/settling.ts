import { z } from 'zod';
import { intentId as id } from './refs.ts';

/** What a kiosk is told once of the place it stands in; kept in its configuration. */
export const SETTLING_INTENTS = [
  /** How large the panel really is, by a card of known size held to it. */
  z.strictObject({
    type: z.literal('set-panel'),
    id,
    widthPx: z.int().min(320).max(8000),
    heightPx: z.int().min(320).max(8000),
    pxPerMm: z.number().min(0.5).max(60),
  }),
  /** The farm's zone of the IANA database. */
  z.strictObject({ type: z.literal('set-time-zone'), id, timeZone: z.string().min(1).max(64) }),
  /** One more who works here. */
  z.strictObject({ type: z.literal('add-person'), id, name: z.string().trim().min(1).max(24) }),
  /** Takes one out who works here no more; records keep the name. */
  z.strictObject({ type: z.literal('remove-person'), id, name: z.string().trim().min(1).max(24) }),
] as const;

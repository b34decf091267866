import { z } from 'zod';
import { Answer, Intent } from './intent.ts';
import { KioskState } from './state.ts';

/** Counted up whenever an older page could no longer understand the server. */
export const PROTOCOL = 1;

/** What the server sends: a greeting, the whole state, then whichever top-level parts of it changed. */
export const ServerMessage = z.discriminatedUnion('type', [
  z.strictObject({ type: z.literal('hello'), protocol: z.literal(PROTOCOL), bootId: z.string() }),
  z.strictObject({ type: z.literal('snapshot'), seq: z.int().nonnegative(), state: KioskState }),
  z.strictObject({ type: z.literal('patch'), seq: z.int().nonnegative(), changes: KioskState.partial() }),
  z.strictObject({ type: z.literal('answer'), answer: Answer }),
  z.strictObject({ type: z.literal('pong') }),
]);
/** What the server sends. */
export type ServerMessage = z.infer<typeof ServerMessage>;

/** What a page sends: intents, and a heartbeat. */
export const ClientMessage = z.discriminatedUnion('type', [
  z.strictObject({ type: z.literal('intent'), intent: Intent }),
  z.strictObject({ type: z.literal('ping') }),
]);
/** What a page sends. */
export type ClientMessage = z.infer<typeof ClientMessage>;

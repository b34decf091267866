import { z } from 'zod';
import { EAR_MESSAGES, MICROPHONE_MESSAGES } from './ear.ts';
import { Answer, Intent } from './intent.ts';
import { VisitorView } from './network.ts';
import { KioskState } from './state.ts';
import { LOUDSPEAKER_MESSAGES, VOICE_MESSAGES } from './voice.ts';

/** Counted up whenever an older page could no longer understand the server. */
export const PROTOCOL = 1;

/** What the server sends: a greeting, the whole state, whichever top-level parts of it changed, what to say, and what was asked of the page aloud. */
export const ServerMessage = z.discriminatedUnion('type', [
  z.strictObject({
    type: z.literal('hello'),
    protocol: z.literal(PROTOCOL),
    bootId: z.string(),
    /** The script of the page that this server gives out, by its file name; `null` where it gives out none. */
    page: z.string().nullable(),
    /** Whose page it is. */
    visitor: VisitorView,
  }),
  /** Who is at work on the device of the page changed. */
  z.strictObject({ type: z.literal('visitor'), visitor: VisitorView }),
  z.strictObject({ type: z.literal('snapshot'), seq: z.int().nonnegative(), state: KioskState }),
  z.strictObject({ type: z.literal('patch'), seq: z.int().nonnegative(), changes: KioskState.partial() }),
  z.strictObject({ type: z.literal('answer'), answer: Answer }),
  z.strictObject({ type: z.literal('pong') }),
  ...VOICE_MESSAGES,
  ...EAR_MESSAGES,
]);
/** What the server sends. */
export type ServerMessage = z.infer<typeof ServerMessage>;

/** What a page sends: intents, a heartbeat, and how its loudspeaker and its microphone fare. */
export const ClientMessage = z.discriminatedUnion('type', [
  z.strictObject({ type: z.literal('intent'), intent: Intent }),
  z.strictObject({ type: z.literal('ping') }),
  ...LOUDSPEAKER_MESSAGES,
  ...MICROPHONE_MESSAGES,
]);
/** What a page sends. */
export type ClientMessage = z.infer<typeof ClientMessage>;

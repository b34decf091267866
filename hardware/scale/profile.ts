import type { ScaleRole } from '../../core/weighing/reading.ts';
import type { Framer } from '../serial/framed.ts';
import type { Poll } from '../serial/poller.ts';
import type { Decoded } from './decoded.ts';
import type { SettingNote } from './settings.ts';

/** What can be asked of a scale besides its weight, as the bytes to send; absent where the format has no word for it. */
export interface ScaleCommands {
  readonly zero?: Uint8Array;
  readonly tare?: Uint8Array;
  readonly clearTare?: Uint8Array;
}

/**
 * How far the length of a frame betrays a byte lost from its number.
 *
 * `fixed`: the format itself says how long it is. `steady`: one scale always sends one length. `steady-each`: one
 * length while the weight stands still, and one while it moves.
 */
export type FrameWidth = 'fixed' | 'steady' | 'steady-each';

/** One serial format of scales: how to cut it, read it and ask for it. */
export interface ScaleProfile {
  /** As written in the configuration. */
  readonly id: string;
  /** For the Shed screen. */
  readonly title: string;
  readonly defaultBaud: number;
  /** Null for a scale that sends by itself. */
  readonly poll: Poll | null;
  readonly commands: ScaleCommands;
  /** A link without a good frame for this long shows nothing. */
  readonly silentAfterMs: number;
  readonly width: FrameWidth;
  /** What the keeper may or must say of the scale, for the Shed screen. */
  readonly settings: readonly SettingNote[];
  /** True where manuals contradict each other or the unit is the keeper's word: a known weight must be shown first. */
  readonly needsProof: boolean;
  /** True where the scale can be asked what it carries and in which steps it counts, by `askAbout`. */
  readonly tellsAbout: boolean;
  createFramer(): Framer;
  /** Reads one frame's text; pure, and never throws whatever the text. */
  decode(text: string, role: ScaleRole, atMs: number): Decoded;
}

/** What formats of scales that send by themselves have in common. */
export const STREAMED = {
  defaultBaud: 9600,
  poll: null,
  commands: {},
  silentAfterMs: 1000,
  settings: [],
  needsProof: false,
  tellsAbout: false,
} as const;

/** What formats of scales that must be asked have in common; two questions fit into the time after which it is silent. */
export function polled(question: string) {
  return {
    ...STREAMED,
    poll: { bytes: wire(question), everyMs: 100, replyWithinMs: 400 },
  } as const;
}

/** The bytes of an ASCII text. */
export function wire(text: string): Uint8Array {
  return Uint8Array.from(text, (character) => character.charCodeAt(0));
}

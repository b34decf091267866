import type { Mass } from '../../core/quantity/mass.ts';
import type { Reading, ScaleRole } from '../../core/weighing/reading.ts';
import type { Framer } from '../serial/framed.ts';
import type { Poll } from '../serial/poller.ts';

/** What is wrong with a frame from which no reading was made. */
export type FrameFault =
  /** Not as long as the format says. */
  | 'bad-width'
  /** A status, sign or separator that the format does not know. */
  | 'bad-header'
  /** The weight field is not one plain decimal number. */
  | 'bad-number'
  /** Not kg, g, lb or oz. */
  | 'unknown-unit'
  /** The scale does not know the command it was sent. */
  | 'command-refused'
  /** The scale received the command garbled. */
  | 'command-garbled'
  /** A sound frame that speaks of something else than a weight. */
  | 'not-a-weight'
  /** A sound frame whose length is not that of its neighbours: a byte may be missing from the number. */
  | 'odd-width';

/** A frame read: a reading, the tare on request, or the named reason why it is neither. */
export type Decoded =
  | { readonly kind: 'reading'; readonly reading: Reading }
  | { readonly kind: 'tare'; readonly mass: Mass }
  | { readonly kind: 'fault'; readonly fault: FrameFault; readonly text: string };

/** One serial format of scales: how to cut it, read it and ask for it. */
export interface ScaleProfile {
  /** As written in the configuration. */
  readonly id: string;
  /** For the Shed screen. */
  readonly title: string;
  readonly defaultBaud: number;
  /** Null for a scale that sends by itself. */
  readonly poll: Poll | null;
  /** A link without a good frame for this long shows nothing. */
  readonly silentAfterMs: number;
  /** True where frames of one scale always have one length but the format does not say which. */
  readonly widthVaries: boolean;
  createFramer(): Framer;
  /** Reads one frame's text; pure, and never throws whatever the text. */
  decode(text: string, role: ScaleRole, atMs: number): Decoded;
}

import { grams, type Mass, type MassUnit } from '../../core/quantity/mass.ts';
import type { Reading, ScaleFault, ScaleRole } from '../../core/weighing/reading.ts';
import type { ShownMass } from './shown-mass.ts';

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
  /** No unit in the frame, and none set for this scale. */
  | 'unit-not-set'
  /** The frame speaks of another unit than the one set for this scale. */
  | 'unit-mismatch'
  /** The format has no word for gross or net, and the scale stands under an animal. */
  | 'net-unknown'
  /** A setting without which nothing can be read is missing or wrong. */
  | 'not-set-up'
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
  | {
      readonly kind: 'reading';
      readonly reading: Reading;
      /** The unit the frame itself names; `null` where it names none. */
      readonly unit: MassUnit | null;
    }
  | { readonly kind: 'tare'; readonly mass: Mass }
  | { readonly kind: 'fault'; readonly fault: FrameFault; readonly text: string };

/** Where and when a frame was read; `vouched` is the keeper's word that no tare is ever taken on this scale. */
export interface Seen {
  readonly text: string;
  readonly role: ScaleRole;
  readonly atMs: number;
  readonly vouched?: boolean;
}

/** What a frame says, before it is known whether it may be used. */
export interface Told {
  /** `null` where the scale shows no number. */
  readonly shown: ShownMass | null;
  readonly moving: boolean;
  /** `null` where the format has no word for it. */
  readonly net: boolean | null;
  readonly zero?: boolean;
  readonly fault?: ScaleFault | null;
  readonly unit: MassUnit | null;
}

/** A frame of which no reading is made. */
export function refuse(fault: FrameFault, text: string): Decoded {
  return { kind: 'fault', fault, text };
}

/**
 * The reading a frame makes: no mass beside a fault, and on the platform no weight that might have a tare taken off.
 *
 * A frame without a number and without a fault is refused as `bad-number`.
 */
export function readingOf(told: Told, seen: Seen): Decoded {
  const { shown, fault = null } = told;
  if (told.net === null && seen.role === 'platform' && seen.vouched !== true) {
    return refuse('net-unknown', seen.text);
  }
  if (shown === null && fault === null) return refuse('bad-number', seen.text);
  return {
    kind: 'reading',
    unit: told.unit,
    reading: {
      role: seen.role,
      mass: fault === null && shown !== null ? shown.mass : grams(0),
      // Where the scale shows no digits its step is not known; a gram stands in and is not used.
      division: shown?.division ?? grams(1),
      stability: told.moving ? 'moving' : 'stable',
      net: told.net ?? false,
      zero: told.zero ?? false,
      ...(fault !== null && { fault }),
      at: seen.atMs,
    },
  };
}

import type { TagMarks } from '../../core/herd/tag.ts';
import type { LinkDriver } from '../serial/link-driver.ts';
import { LineReader } from './line-reader.ts';
import { RepeatFilter } from './repeat-filter.ts';
import { readWandLine, type WandRefusal } from './wand-line.ts';

/**
 * What the wand read: an animal's number, or something it is told why not to take. `at` is uptime in milliseconds.
 *
 * `marks` is for the screen: what a transponder says beside its number decides nothing.
 */
export type WandRead =
  | { readonly kind: 'tag'; readonly tag: string; readonly marks: TagMarks; readonly at: number }
  | { readonly kind: 'refused'; readonly why: WandRefusal; readonly text: string; readonly at: number };

/** The one profile of wands, as the configuration names it. */
export const WAND_PROFILE = 'wand-line';

/** The speed of a wand that was not set otherwise, in bits a second. */
export const WAND_BAUD = 9600;

/** Drives a wand that sends a line for each tag; the same tag within 3 s is told once. */
export function wandDriver(now: () => number): LinkDriver<WandRead> {
  const filter = new RepeatFilter(now);
  return {
    readyWhen: 'settled',
    silentAfterMs: null,
    poll: null,
    openSession(receive) {
      const reader = new LineReader((framed) => {
        if (framed.kind === 'discarded') {
          receive(framed);
          return;
        }
        // Some readers send an empty line between two reads.
        if (framed.text.trim() === '') return;
        const line = readWandLine(framed.text);
        if (line.kind === 'tag' && !filter.isNews(line.tag)) return;
        if (line.kind === 'refused' && line.why === 'unknown-line') {
          receive({ kind: 'bad', fault: line.why, text: line.text });
        } else {
          receive({ kind: 'item', item: { ...line, at: now() } });
        }
      });
      return (chunk) => reader.push(chunk);
    },
  };
}

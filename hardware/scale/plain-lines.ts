import { LineSplitter } from '../serial/line-splitter.ts';
import type { LinkDriver } from '../serial/link-driver.ts';

/** The longest line shown, in characters; the longest an expression is tried on. */
const MAX_LINE = 64;
/** A scale that sends by itself sends more often than this. */
const SILENT_MS = 3000;

/** How many bytes of what was heard stand in whole lines of printable ASCII that end with CR LF. */
export function plainBytes(bytes: Uint8Array): number {
  return new LineSplitter({ maxLength: MAX_LINE, synchronised: false })
    .push(bytes)
    .reduce(
      (sum, framed) => sum + (framed.kind === 'line' && framed.text !== '' ? framed.text.length : 0),
      0,
    );
}

/** Drives a device of which nothing is known but that it sends lines of printable ASCII: each line is an item. */
export function plainLineDriver(): LinkDriver<string> {
  return {
    readyWhen: 'first-item',
    silentAfterMs: SILENT_MS,
    poll: null,
    openSession(receive) {
      const splitter = new LineSplitter({ maxLength: MAX_LINE, synchronised: false });
      return (chunk) => {
        for (const framed of splitter.push(chunk)) {
          if (framed.kind === 'discarded') receive(framed);
          else receive({ kind: 'item', item: framed.text });
        }
      };
    },
  };
}

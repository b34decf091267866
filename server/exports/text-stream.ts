import { Readable } from 'node:stream';
import { setImmediate } from 'node:timers/promises';

/** How much text is gathered before it is sent on, in characters. */
const CHUNK = 32 * 1024;

/**
 * A stream of the pieces of a file. No more than a chunk of it is held at once; between chunks whoever else is at the
 * kiosk gets a turn.
 */
export function textStream(pieces: Iterable<string>): Readable {
  return Readable.from(chunks(pieces), { objectMode: false, highWaterMark: 2 * CHUNK });
}

async function* chunks(pieces: Iterable<string>): AsyncGenerator<Buffer> {
  let text = '';
  for (const piece of pieces) {
    text += piece;
    if (text.length < CHUNK) continue;
    yield Buffer.from(text);
    text = '';
    await setImmediate();
  }
  if (text !== '') yield Buffer.from(text);
}

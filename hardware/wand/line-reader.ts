import { ReadlineParser } from '@serialport/parser-readline';
import type { Framed } from '../serial/framed.ts';

/** The most bytes held without an end of line; the longest known line has 29 characters. */
const MAX_UNENDED = 256;
const CR = 0x0d;
const LF = 0x0a;
const STX = 0x02;

/**
 * Reads CR LF lines of a device that speaks seldom: the very first line counts.
 *
 * The library's parser finds the lines; the bound is ours, since the parser has none: after more than 256 bytes
 * without an end of line it is thrown away, and all up to the next end of line is told as discarded. Lines are
 * told in order, but not always before `push` returns. One reader for each connection.
 */
export class LineReader {
  readonly #tell: (framed: Framed) => void;
  #parser: ReadlineParser;
  #unended = 0;
  #lastWasCr = false;

  constructor(tell: (framed: Framed) => void) {
    this.#tell = tell;
    this.#parser = freshParser(tell, true);
  }

  /** Bytes held that have no end of line yet; 256 at most. */
  get pendingBytes(): number {
    return this.#unended;
  }

  push(chunk: Uint8Array): void {
    let from = 0;
    for (const [at, byte] of chunk.entries()) {
      this.#unended = byte === LF && this.#lastWasCr ? 0 : this.#unended + 1;
      this.#lastWasCr = byte === CR;
      if (this.#unended > MAX_UNENDED) {
        // Whole lines before the overflow still leave the old parser, which nobody writes to any more.
        this.#parser.write(chunk.slice(from, at + 1));
        from = at + 1;
        this.#restart();
      }
    }
    this.#parser.write(chunk.slice(from));
  }

  #restart(): void {
    const bytes = this.#unended;
    this.#unended = 0;
    this.#lastWasCr = false;
    this.#parser = freshParser(this.#tell, false);
    this.#tell({ kind: 'discarded', bytes, reason: 'too-long' });
  }
}

/** A parser of its own listener; where it does not start at a line's beginning, its first line is discarded. */
function freshParser(tell: (framed: Framed) => void, atLineStart: boolean): ReadlineParser {
  // In object mode each line stays one item even where the stream has to hold it for a moment.
  const parser = new ReadlineParser({ delimiter: '\r\n', encoding: 'latin1', readableObjectMode: true });
  let whole = atLineStart;
  parser.on('data', (text: string) => {
    const bytes = text.length + 2;
    if (!whole) tell({ kind: 'discarded', bytes, reason: 'too-long' });
    else if (isPrintable(text)) tell({ kind: 'line', text });
    else tell({ kind: 'discarded', bytes, reason: 'not-ascii' });
    whole = true;
  });
  return parser;
}

/** Printable ASCII, but for the STX that some readers begin a line with. */
function isPrintable(text: string): boolean {
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if ((code < 0x20 || code > 0x7e) && !(at === 0 && code === STX)) return false;
  }
  return true;
}

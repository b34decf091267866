import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Framed } from '../../../hardware/serial/framed.ts';
import { LineReader } from '../../../hardware/wand/line-reader.ts';
import { bytes, cut, cuts, rubbish } from '../bytes.ts';
import { accountedFor } from '../serial/framing-laws.ts';

interface ReadAll {
  readonly framed: readonly Framed[];
  readonly pending: number;
}

/** Everything a fresh reader tells of these chunks, after the stream's first turn is over. */
async function readAll(chunks: readonly Uint8Array[]): Promise<ReadAll> {
  const framed: Framed[] = [];
  const reader = new LineReader((one) => framed.push(one));
  for (const chunk of chunks) reader.push(chunk);
  await new Promise((resolve) => setImmediate(resolve));
  return { framed, pending: reader.pendingBytes };
}

const linesOf = ({ framed }: ReadAll) => framed.flatMap((one) => (one.kind === 'line' ? [one.text] : []));

describe('the line reader of the wand', () => {
  it('gives the very first line, whole, though it came in pieces', async () => {
    const { framed } = await readAll([bytes('LA 982 0000'), bytes('01088420\r'), bytes('\n')]);
    expect(framed).toEqual([{ kind: 'line', text: 'LA 982 000001088420' }]);
  });

  it('keeps lines apart that came in one piece, and gives empty ones as such', async () => {
    expect(linesOf(await readAll([bytes('one\r\n\r\ntwo\r\n')]))).toEqual(['one', '', 'two']);
  });

  it('takes a leading STX and discards any other control character', async () => {
    const { framed } = await readAll([bytes('\x02LI\r\nL\x02I\r\nL\x1bI\r\nLI\xe9\r\n')]);
    expect(framed).toEqual([
      { kind: 'line', text: '\x02LI' },
      { kind: 'discarded', bytes: 5, reason: 'not-ascii' },
      { kind: 'discarded', bytes: 5, reason: 'not-ascii' },
      { kind: 'discarded', bytes: 5, reason: 'not-ascii' },
    ]);
  });

  it('throws an endless line away with its tail, so that the tail passes for no line', async () => {
    const { framed } = await readAll([bytes(`${'x'.repeat(257)}982000001088420\r\n964000000123456\r\n`)]);
    expect(framed.filter((one) => one.kind === 'discarded')).toEqual([
      { kind: 'discarded', bytes: 257, reason: 'too-long' },
      { kind: 'discarded', bytes: 17, reason: 'too-long' },
    ]);
    expect(framed.filter((one) => one.kind === 'line')).toEqual([{ kind: 'line', text: '964000000123456' }]);
  });

  it('still gives the lines that stood whole before an endless one', async () => {
    expect(linesOf(await readAll([bytes(`one\r\ntwo\r\n${'x'.repeat(600)}`)]))).toEqual(['one', 'two']);
  });

  it('holds no more than 256 bytes of a megabyte without an end of line', async () => {
    const chunk = new Uint8Array(1024).fill(0x41);
    const { framed, pending } = await readAll(Array.from({ length: 1024 }, () => chunk));
    expect(pending).toBeLessThanOrEqual(256);
    expect(accountedFor(framed) + pending).toBe(2 ** 20);
    expect(framed.every((one) => one.kind === 'discarded')).toBe(true);
  });

  it('gives the same lines and accounts for every byte however they were cut', async () => {
    const long = fc
      .tuple(rubbish(200), rubbish(400))
      .map(([a, b]) => Uint8Array.of(...a, ...bytes('x'.repeat(200)), ...b));
    await fc.assert(
      fc.asyncProperty(fc.oneof(rubbish(100), long), cuts, async (whole, places) => {
        const inPieces = await readAll(cut(whole, places));
        expect(linesOf(inPieces)).toEqual(linesOf(await readAll([whole])));
        expect(accountedFor(inPieces.framed) + inPieces.pending).toBe(whole.length);
      }),
      { numRuns: 300 },
    );
  });
});

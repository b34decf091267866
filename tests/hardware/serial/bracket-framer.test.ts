import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BracketFramer } from '../../../hardware/serial/bracket-framer.ts';
import { bytes, cut, cuts, rubbish } from '../bytes.ts';
import { accountedFor, pushAll } from './framing-laws.ts';

const framerOf = () => new BracketFramer({ begin: 0x0a, end: 0x0d, maxFrame: 64 });

describe('a framer between LF and CR', () => {
  it('gives a frame with its CR, without waiting for the next one', () => {
    const framer = framerOf();
    expect(framer.push(bytes('\n 1G         943g  '))).toEqual([]);
    expect(framer.push(bytes('\r'))).toEqual([{ kind: 'line', text: ' 1G         943g  ' }]);
    expect(framer.pendingBytes).toBe(0);
  });

  it('discards a frame that another one interrupts, and takes the other', () => {
    expect(framerOf().push(bytes('\n 1G     \n?\r'))).toEqual([
      { kind: 'discarded', bytes: 9, reason: 'broken-off' },
      { kind: 'line', text: '?' },
    ]);
  });

  it('discards what lies between frames', () => {
    expect(framerOf().push(bytes('943g\r\n?\rxx\r\n!\r'))).toEqual([
      { kind: 'discarded', bytes: 5, reason: 'outside-frame' },
      { kind: 'line', text: '?' },
      { kind: 'discarded', bytes: 3, reason: 'outside-frame' },
      { kind: 'line', text: '!' },
    ]);
  });

  it('discards a frame with a byte that is not printable', () => {
    expect(framerOf().push(bytes('\nW\x1b\r\nW\r'))).toEqual([
      { kind: 'discarded', bytes: 4, reason: 'not-ascii' },
      { kind: 'line', text: 'W' },
    ]);
  });

  it('takes a frame of 64 bytes and discards a longer one', () => {
    const text = 'x'.repeat(62);
    expect(framerOf().push(bytes(`\n${text}\r`))).toEqual([{ kind: 'line', text }]);
    const framed = framerOf().push(bytes(`\n${text}x\r\n?\r`));
    expect(framed.map((one) => (one.kind === 'line' ? one.text : one.reason))).toEqual([
      'too-long',
      'outside-frame',
      '?',
    ]);
  });

  it('reports endless noise now and then and holds no more than 64 bytes of it', () => {
    const framer = framerOf();
    const framed = framer.push(new Uint8Array(1000).fill(0x78));
    expect(framed).toHaveLength(15);
    expect(framer.pendingBytes).toBe(1000 - 15 * 64);
  });

  it('frames the same however the bytes were cut', () => {
    fc.assert(
      fc.property(rubbish(300), cuts, (whole, places) => {
        expect(pushAll(framerOf(), cut(whole, places))).toEqual(framerOf().push(whole));
      }),
      { numRuns: 1000 },
    );
  });

  it('accounts for every byte', () => {
    fc.assert(
      fc.property(rubbish(300), cuts, (whole, places) => {
        const framer = framerOf();
        const framed = pushAll(framer, cut(whole, places));
        expect(accountedFor(framed) + framer.pendingBytes).toBe(whole.length);
      }),
      { numRuns: 1000 },
    );
  });

  it('reads the very first whole frame after any noise', () => {
    fc.assert(
      fc.property(rubbish(200), (whole) => {
        const framer = framerOf();
        framer.push(whole);
        expect(framer.push(bytes('\n 1G         943g  \r')).at(-1)).toEqual({
          kind: 'line',
          text: ' 1G         943g  ',
        });
      }),
      { numRuns: 1000 },
    );
  });
});

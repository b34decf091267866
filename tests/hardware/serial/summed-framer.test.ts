import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SummedFramer } from '../../../hardware/serial/summed-framer.ts';
import { bytes } from '../bytes.ts';
import { accountedFor } from './framing-laws.ts';

/** Printed rule, computed checksum: 123.45 kg gross, stable. */
const FRAME = Uint8Array.from(Buffer.from('022c30203031323334353030303030300d26', 'hex'));
const TEXT = ',0 012345000000\r';

describe('the framer of summed frames', () => {
  it('gives the 16 bytes between STX and checksum with the last byte', () => {
    const framer = new SummedFramer();
    expect(framer.push(FRAME.subarray(0, 17))).toEqual([]);
    expect(framer.pendingBytes).toBe(17);
    expect(framer.push(FRAME.subarray(17))).toEqual([{ kind: 'line', text: TEXT }]);
    expect(framer.pendingBytes).toBe(0);
  });

  it('takes a checksum that looks like STX, CR or any other byte', () => {
    for (const wanted of [0x02, 0x0d, 0x0a, 0x00, 0x7f]) {
      // The last digit of the tare and the status word above it make up for the checksum.
      const sum = FRAME.subarray(0, 17).reduce((total, byte) => total + byte, 0);
      const change = (((-wanted - sum) % 128) + 128) % 128;
      const frame = Uint8Array.from(FRAME);
      frame[3] = (0x20 + change) % 128;
      frame[17] = wanted;
      expect(new SummedFramer().push(frame)).toMatchObject([{ kind: 'line' }]);
    }
  });

  it('refuses every frame with one byte changed', () => {
    fc.assert(
      fc.property(fc.nat(17), fc.integer({ min: 1, max: 255 }), (at, flip) => {
        const framer = new SummedFramer();
        const framed = framer.push(FRAME.map((byte, place) => (place === at ? byte ^ flip : byte)));
        expect(framed.some((one) => one.kind === 'line')).toBe(false);
        expect(accountedFor(framed) + framer.pendingBytes).toBe(18);
      }),
    );
  });

  it('names a wrong sum and a byte that is not ASCII, and finds the next frame', () => {
    const wrong = FRAME.map((byte, at) => (at === 8 ? 0x35 : byte));
    const eight = FRAME.map((byte, at) => (at === 8 ? byte | 0x80 : byte));
    for (const [frame, reason] of [
      [wrong, 'bad-checksum'],
      [eight, 'not-ascii'],
    ] as const) {
      const framed = new SummedFramer().push(Uint8Array.of(...frame, ...FRAME));
      expect(framed[0]).toEqual({ kind: 'discarded', bytes: 1, reason });
      expect(framed.at(-1)).toEqual({ kind: 'line', text: TEXT });
      expect(accountedFor(framed)).toBe(36);
    }
  });

  it('looks for a frame within one that failed', () => {
    const framed = new SummedFramer().push(Uint8Array.of(...bytes('\x02\x02ab\x02'), ...FRAME));
    expect(framed.at(-1)).toEqual({ kind: 'line', text: TEXT });
    expect(accountedFor(framed)).toBe(5 + 18);
  });

  it('tells of endless noise in lots', () => {
    const framer = new SummedFramer();
    expect(framer.push(new Uint8Array(640).fill(0x78))).toHaveLength(10);
    expect(framer.pendingBytes).toBe(0);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BracketFramer } from '../../../hardware/serial/bracket-framer.ts';
import { sevenBitFramer, withEvenParity, withoutEvenParity } from '../../../hardware/serial/seven-bits.ts';
import { bytes } from '../bytes.ts';

describe('seven bits with even parity', () => {
  it('make the number of ones in each byte even', () => {
    // 1 has three ones, 3 has four.
    expect(withEvenParity(bytes('13'))).toEqual(Uint8Array.of(0xb1, 0x33));
    for (const byte of withEvenParity(Uint8Array.from({ length: 256 }, (_, at) => at))) {
      expect(byte.toString(2).replaceAll('0', '').length % 2).toBe(0);
    }
  });

  it('give back what was sent', () => {
    const seven = fc.uint8Array({ max: 0x7f, maxLength: 40 });
    fc.assert(
      fc.property(seven, (sent) => {
        expect(withoutEvenParity(withEvenParity(sent))).toEqual(sent);
      }),
    );
  });

  it('betray any single bit gone wrong', () => {
    fc.assert(
      fc.property(fc.nat(0x7f), fc.nat(7), (byte, bit) => {
        const sent = withEvenParity(Uint8Array.of(byte));
        expect(withoutEvenParity(sent.map((one) => one ^ (1 << bit)))).toEqual(Uint8Array.of(0xff));
      }),
    );
  });

  it('make the frame around a wrong bit fall, and count its bytes', () => {
    const framer = sevenBitFramer(new BracketFramer({ begin: 0x0a, end: 0x0d, maxFrame: 64 }));
    const good = withEvenParity(bytes('\n 1G         943g  \r'));
    expect(framer.push(good)).toEqual([{ kind: 'line', text: ' 1G         943g  ' }]);
    const torn = good.map((byte, at) => (at === 14 ? byte ^ 4 : byte));
    expect(framer.push(torn)).toEqual([{ kind: 'discarded', bytes: 20, reason: 'not-ascii' }]);
    expect(framer.pendingBytes).toBe(0);
  });
});

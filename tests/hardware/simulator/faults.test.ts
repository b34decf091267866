import { describe, expect, it } from 'vitest';
import { dropByte, noise, stall, together } from '../../../hardware/simulator/faults.ts';
import { seededRandom } from '../../../hardware/simulator/random.ts';
import { bytes } from '../bytes.ts';

const LINE = bytes('ST,GS,+0012.34kg\r\n');

describe('a fault on the line', () => {
  it('that drops bytes leaves the others in order', () => {
    const draws = [0.9, 0, 0.9, 0.9];
    const fault = dropByte(() => draws.shift() ?? 1, 0.5);
    expect(fault(bytes('abcd'))).toEqual(bytes('acd'));
  });

  it('that drops one byte in ten drops about that', () => {
    const fault = dropByte(seededRandom(3), 0.1);
    expect(Math.abs(fault(new Uint8Array(10_000)).length - 9000)).toBeLessThan(150);
  });

  it('of noise puts up to the most bytes before a line, at its chance', () => {
    const fault = noise(seededRandom(4), 0.5, 5);
    const lengths = Array.from({ length: 400 }, () => fault(LINE).length - LINE.length);
    expect(Math.max(...lengths)).toBe(5);
    expect(Math.abs(lengths.filter((length) => length === 0).length - 200)).toBeLessThan(50);
    const noisy = noise(seededRandom(4), 1, 5)(LINE);
    expect(noisy.subarray(noisy.length - LINE.length)).toEqual(LINE);
  });

  it('that stalls lets nothing through', () => {
    expect(stall()(LINE)).toHaveLength(0);
  });

  it('can be several at once, the last given nearest to the device', () => {
    const upper = (given: Uint8Array) => bytes(Buffer.from(given).toString('latin1').toUpperCase());
    const prefix = (given: Uint8Array) => Uint8Array.of(...bytes('x'), ...given);
    expect(together(upper, prefix)(bytes('a'))).toEqual(bytes('XA'));
    expect(together(prefix, upper)(bytes('a'))).toEqual(bytes('xA'));
    expect(together()(LINE)).toEqual(LINE);
  });
});

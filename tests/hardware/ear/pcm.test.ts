import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { joined } from '../../../hardware/ear/gate.ts';
import { createResampler, EAR_RATE, isHearable } from '../../../hardware/ear/pcm.ts';

function tone(hertz: number, rate: number, seconds: number, channels = 1): Int16Array {
  return Int16Array.from({ length: Math.round(rate * seconds) * channels }, (_, i) =>
    Math.round(10_000 * Math.sin((2 * Math.PI * hertz * Math.floor(i / channels)) / rate)),
  );
}

function resampled(samples: Int16Array, rate: number, channels = 1, piece = samples.length): Int16Array {
  const resampler = createResampler({ rate, channels });
  const parts: Int16Array[] = [];
  for (let at = 0; at < samples.length; at += piece)
    parts.push(resampler.push(samples.subarray(at, at + piece)));
  return joined([...parts, resampler.end()]);
}

/** Root mean square of the middle, where neither end is felt. */
function level(samples: Int16Array): number {
  const middle = samples.subarray(samples.length / 4, (3 * samples.length) / 4);
  return Math.sqrt(middle.reduce((sum, x) => sum + x * x, 0) / middle.length);
}

const FULL = 10_000 / Math.SQRT2;

describe('sound of any rate becomes 16 kHz', () => {
  test.each([8000, 11_025, 22_050, 32_000, 44_100, 48_000, 96_000])('%d Hz keeps a tone of 1 kHz', (rate) => {
    const out = resampled(tone(1000, rate, 0.5), rate);
    expect(Math.abs(out.length - EAR_RATE / 2)).toBeLessThan(40);
    expect(level(out) / FULL).toBeCloseTo(1, 1);
    const exact = tone(1000, EAR_RATE, 0.5);
    const off = out.slice(2000, 6000).map((x, i) => x - (exact[2000 + i] ?? 0));
    expect(level(off) / FULL).toBeLessThan(0.05);
  });

  test('what would fold back into speech is gone: 10 kHz sampled at 48 kHz', () => {
    expect(level(resampled(tone(10_000, 48_000, 0.5), 48_000)) / FULL).toBeLessThan(0.003);
  });

  test('16 kHz of one channel passes as it is', () => {
    const samples = tone(440, EAR_RATE, 0.1);
    expect(resampled(samples, EAR_RATE)).toEqual(samples);
  });

  test('channels are averaged, so a voice in one of two is heard at half', () => {
    const both = tone(1000, EAR_RATE, 0.1, 2);
    expect(level(resampled(both, EAR_RATE, 2)) / FULL).toBeCloseTo(1, 2);
    const one = both.map((x, i) => (i % 2 === 0 ? x : 0));
    expect(level(resampled(one, EAR_RATE, 2)) / FULL).toBeCloseTo(0.5, 2);
  });

  test('how the stream is cut does not matter, not even within a frame of channels', () => {
    const samples = tone(700, 44_100, 0.05, 2);
    const whole = resampled(samples, 44_100, 2);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999 }), (piece) => {
        expect(resampled(samples, 44_100, 2, piece)).toEqual(whole);
      }),
      { numRuns: 30 },
    );
  });

  test('a clipped sound stays within its bounds', () => {
    const square = Int16Array.from({ length: 4800 }, (_, i) => (i % 48 < 24 ? 32_767 : -32_768));
    const out = resampled(square, 48_000);
    expect(out.every((x) => x >= -32_768 && x <= 32_767)).toBe(true);
    expect(level(out)).toBeGreaterThan(25_000);
  });
});

test.each([
  [7999, 1],
  [192_001, 1],
  [16_000.5, 1],
  [Number.NaN, 1],
  [16_000, 0],
  [16_000, 9],
])('%d Hz in %d channels cannot be heard', (rate, channels) => {
  expect(isHearable({ rate, channels })).toBe(false);
  expect(() => createResampler({ rate, channels })).toThrow(RangeError);
});

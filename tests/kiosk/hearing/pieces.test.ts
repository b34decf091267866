import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { loudness, SOFTEST_DB } from '../../../kiosk/hearing/loudness.ts';
import { verdictOf } from '../../../kiosk/hearing/loudness-verdict.ts';
import { Pieces } from '../../../kiosk/hearing/pieces.ts';

describe('pieces of sound', () => {
  test('full scale is the whole of 16 bits, and what lies beyond is clipped', () => {
    const pieces: Int16Array[] = [];
    new Pieces(5, (piece) => pieces.push(piece)).push(Float32Array.of(0, 1, -1, 3, -0.5));
    expect(pieces.map((piece) => [...piece])).toEqual([[0, 32_767, -32_767, 32_767, -16_383]]);
  });

  test('blocks of any length come out in pieces of one, in order, and nothing twice', () => {
    const sample = fc.integer({ min: -32_767, max: 32_767 });
    fc.assert(
      fc.property(
        fc.array(fc.array(sample, { maxLength: 40 })),
        fc.integer({ min: 1, max: 30 }),
        (blocks, length) => {
          const out: number[][] = [];
          const pieces = new Pieces(length, (piece) => out.push([...piece]));
          for (const block of blocks) pieces.push(Float32Array.from(block, (each) => each / 32_767));
          const all = blocks.flat();
          expect(out.every((piece) => piece.length === length)).toBe(true);
          expect(out.flat()).toEqual(all.slice(0, all.length - (all.length % length)));
        },
      ),
    );
  });
});

describe('loudness', () => {
  // A sine of amplitude A has the root mean square A / sqrt 2: 3.01 dB below that of a square wave.
  const sine = (amplitude: number): Int16Array =>
    Int16Array.from({ length: 1600 }, (_, at) => amplitude * Math.sin((2 * Math.PI * at) / 16));

  test.each([
    [Int16Array.of(-32_768, -32_768), 0],
    [sine(32_767), -3.01],
    [sine(3277), -23.01],
    [new Int16Array(8), SOFTEST_DB],
    [new Int16Array(0), SOFTEST_DB],
  ])('%#: is %f dB under full scale', (samples, decibels) => {
    expect(loudness(samples)).toBeCloseTo(decibels, 1);
  });

  test.each([
    [SOFTEST_DB, 'silent'],
    [-50, 'soft'],
    [-25, 'good'],
    [-3, 'loud'],
  ] as const)('%d dB is %s', (decibels, verdict) => {
    expect(verdictOf(decibels)).toBe(verdict);
  });
});

import { describe, expect, it } from 'vitest';
import type { ScaleProfile } from '../../../hardware/scale/profile.ts';
import { SMA } from '../../../hardware/scale/sma.ts';
import { ST_GS } from '../../../hardware/scale/st-gs.ts';
import { between, type Random, seededRandom } from '../../../hardware/simulator/random.ts';
import { SMA_FRAMES, ST_GS_FRAMES, type WeightFrame } from '../../oracles/serial-frames.ts';
import { bytes } from '../bytes.ts';
import { accountedFor } from '../serial/framing-laws.ts';

/** A megabyte, in pieces of 1 to 40 bytes: half frames, noise, and now and then a whole frame. */
const TOTAL = 2 ** 20;

/**
 * Stands before each tail of a frame. A head that meets the tail of another at the same place is a frame, byte for
 * byte, and no format without a check sum can tell; how lost bytes are met is tested with the driver.
 */
const BAD_BYTE = 0xff;

function badLine(random: Random, frames: readonly WeightFrame[]): Uint8Array[] {
  const chunks: Uint8Array[] = [];
  for (let size = 0; size < TOTAL; size += chunks.at(-1)?.length ?? 0) {
    const frame = bytes(frames[Math.floor(random() * frames.length)]?.wire ?? '');
    const cutAt = 1 + Math.floor(random() * (frame.length - 1));
    const pick = random();
    if (pick < 0.4) chunks.push(frame.subarray(0, cutAt));
    else if (pick < 0.7) chunks.push(Uint8Array.of(BAD_BYTE, ...frame.subarray(cutAt)));
    else if (pick < 0.95)
      chunks.push(Uint8Array.from({ length: 1 + random() * 40 }, () => between(random, 0, 256)));
    else chunks.push(frame);
  }
  return chunks;
}

/** The texts that may be read: those of whole frames. Any other text that makes a reading was made up. */
function textsOf(frames: readonly WeightFrame[]): Set<string> {
  return new Set(frames.map((frame) => frame.wire.replace(/^\n|\r\n?$/g, '')));
}

const SEEDS = [1, 2, 3];
const CASES: readonly (readonly [ScaleProfile, readonly WeightFrame[]])[] = [
  [SMA, SMA_FRAMES],
  [ST_GS, ST_GS_FRAMES],
];

describe.each(CASES)('a megabyte of noise and half frames', (profile, frames) => {
  it.each(SEEDS)(
    `in format ${profile.id} is held in little, counted byte by byte and read as whole frames only, seed %i`,
    (seed) => {
      const chunks = badLine(seededRandom(seed), frames);
      const known = textsOf(frames);
      const framer = profile.createFramer();
      let total = 0;
      let accounted = 0;
      let mostHeld = 0;
      let readings = 0;
      const madeUp: string[] = [];
      for (const chunk of chunks) {
        const framed = framer.push(chunk);
        total += chunk.length;
        accounted += accountedFor(framed);
        // What an over-long line dropped is only counted, not held.
        mostHeld = Math.max(mostHeld, framer.pendingBytes);
        for (const one of framed) {
          if (one.kind !== 'line') continue;
          const decoded = profile.decode(one.text, 'platform', 0);
          if (decoded.kind !== 'reading') continue;
          readings += 1;
          if (!known.has(one.text)) madeUp.push(one.text);
        }
      }
      expect(accounted + framer.pendingBytes).toBe(total);
      expect(madeUp).toEqual([]);
      expect(readings).toBeGreaterThan(0);
      expect(mostHeld).toBeLessThan(1000);
    },
  );
});

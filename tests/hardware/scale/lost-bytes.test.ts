import { describe, expect, it } from 'vitest';
import { grams } from '../../../core/quantity/mass.ts';
import type { Reading } from '../../../core/weighing/reading.ts';
import { scaleDriver } from '../../../hardware/scale/scale-driver.ts';
import { SMA } from '../../../hardware/scale/sma.ts';
import { ST_GS } from '../../../hardware/scale/st-gs.ts';
import { encodeSma } from '../../../hardware/simulator/encode-sma.ts';
import { encodeStGs } from '../../../hardware/simulator/encode-st-gs.ts';
import { type ByteFault, dropByte, noise, together } from '../../../hardware/simulator/faults.ts';
import { seededRandom } from '../../../hardware/simulator/random.ts';

/** A weight whose every shortening and every digit doubled is another weight: 123.45 kg. */
const STEPS = 12345;
const KG = { unit: 'kg', division: grams(10) } as const;
const STANDING = { steps: STEPS, moving: false, net: false, range: 'within' } as const;
const FORMATS = [
  [SMA, encodeSma(STANDING, KG)],
  [ST_GS, encodeStGs(STANDING, KG, 'A')],
  [ST_GS, encodeStGs(STANDING, KG, 'B')],
] as const;
const FRAMES = 20_000;

function readThrough(profile: typeof SMA, frame: Uint8Array, fault: ByteFault): Reading[] {
  const readings: Reading[] = [];
  const push = scaleDriver(profile, 'platform', () => 0).openSession((one) => {
    if (one.kind === 'item') readings.push(one.item);
  });
  for (let sent = 0; sent < FRAMES; sent += 1) push(fault(frame));
  return readings;
}

describe.each(FORMATS)('a scale on a line that loses bytes', (profile, frame) => {
  it(`gives no weight but the one shown, one byte in a hundred lost (${profile.id})`, () => {
    const readings = readThrough(profile, frame, dropByte(seededRandom(7), 0.01));
    expect(new Set(readings.map((reading) => reading.mass.value))).toEqual(new Set([STEPS * 10]));
    expect(readings.length).toBeGreaterThan(FRAMES / 2);
    expect(readings.length).toBeLessThan(FRAMES);
  });

  it(`gives no weight but the one shown with noise between the frames as well (${profile.id})`, () => {
    const random = seededRandom(8);
    const readings = readThrough(profile, frame, together(dropByte(random, 0.005), noise(random, 0.2, 12)));
    expect(new Set(readings.map((reading) => reading.mass.value))).toEqual(new Set([STEPS * 10]));
    expect(readings.length).toBeGreaterThan(FRAMES / 2);
  });
});

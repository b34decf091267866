import { describe, expect, it } from 'vitest';
import { grams } from '../../../core/quantity/mass.ts';
import { scaleDriver } from '../../../hardware/scale/scale-driver.ts';
import { type ByteFault, dropByte, noise, together } from '../../../hardware/simulator/faults.ts';
import { seededRandom } from '../../../hardware/simulator/random.ts';
import { FORMAT_CASES, type FormatCase, settingsFor } from './format-cases.ts';

/** A weight whose every shortening and every digit doubled is another weight: 123.45 kg. */
const STEPS = 12345;
const KG = { unit: 'kg', division: grams(10) } as const;
const STANDING = { steps: STEPS, moving: false, net: false, range: 'within' } as const;
const FRAMES = 20_000;

/** The masses read; what comes with a fault has none. */
function readThrough(of: FormatCase, fault: ByteFault): number[] {
  const masses: number[] = [];
  const frame = of.encode(STANDING, KG);
  const push = scaleDriver(of.make(settingsFor(of, KG.unit)), 'bench', () => 0).openSession((one) => {
    if (one.kind === 'item' && one.item.fault === undefined) masses.push(one.item.mass.value);
  });
  for (let sent = 0; sent < FRAMES; sent += 1) push(fault(frame));
  return masses;
}

describe.each(FORMAT_CASES)('a scale that speaks $name on a line that loses bytes', (of) => {
  it('gives no weight but the one shown, one byte in a hundred lost', () => {
    const masses = readThrough(of, dropByte(seededRandom(7), 0.01));
    expect(new Set(masses)).toEqual(new Set([STEPS * 10]));
    expect(masses.length).toBeGreaterThan(FRAMES / 2);
    expect(masses.length).toBeLessThan(FRAMES);
  });

  it('gives no weight but the one shown with noise between the frames as well', () => {
    const random = seededRandom(8);
    const masses = readThrough(of, together(dropByte(random, 0.005), noise(random, 0.2, 12)));
    expect(new Set(masses)).toEqual(new Set([STEPS * 10]));
    expect(masses.length).toBeGreaterThan(FRAMES / 2);
  });
});

import { expect } from 'vitest';
import type { ScaleRole } from '../../../core/weighing/reading.ts';
import type { Decoded } from '../../../hardware/scale/decoded.ts';
import type { ScaleProfile } from '../../../hardware/scale/profile.ts';
import type { ExpectedReading } from '../../oracles/serial-frames.ts';
import { bytes } from '../bytes.ts';

/** The one frame text that a framer of the profile finds in these bytes, once it is in step. */
export function onlyText(profile: ScaleProfile, wire: string): string {
  const framer = profile.createFramer();
  // Lines begin to count behind the first end of line; to other formats this is noise, told of at once or not.
  framer.push(bytes('\r\n'));
  const framed = framer.push(bytes(wire)).filter((one) => one.kind === 'line' || one.bytes > 2);
  expect(framed).toHaveLength(1);
  const [only] = framed;
  if (only?.kind !== 'line') throw new Error(`no frame in ${JSON.stringify(wire)}`);
  return only.text;
}

/** Compares a decoded reading with the oracle's, masses to a part in 10^12. */
export function expectReading(decoded: Decoded, role: string, at: number, expected: ExpectedReading): void {
  if (decoded.kind !== 'reading') throw new Error(`not a reading: ${JSON.stringify(decoded)}`);
  const { reading } = decoded;
  expect(reading).toMatchObject({
    role,
    at,
    stability: expected.moving ? 'moving' : 'stable',
    net: expected.net,
    zero: expected.zero,
  });
  expect(reading.fault).toBe(expected.fault);
  expectMass(reading.mass.value, expected.grams);
  expectMass(reading.division.value, expected.division);
}

/** The frame is whole, and is refused under this name. */
export function expectFault(
  profile: ScaleProfile,
  wire: string,
  fault: string,
  role: ScaleRole = 'platform',
): void {
  const text = onlyText(profile, wire);
  expect(profile.decode(text, role, 0)).toEqual({ kind: 'fault', fault, text });
}

function expectMass(actual: number, expected: number): void {
  expect(Object.is(actual, -0)).toBe(false);
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(1e-12 * Math.abs(expected));
}

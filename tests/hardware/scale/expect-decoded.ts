import { expect } from 'vitest';
import type { Decoded, ScaleProfile } from '../../../hardware/scale/profile.ts';
import type { ExpectedReading } from '../../oracles/serial-frames.ts';
import { bytes } from '../bytes.ts';

/** The one frame text that a fresh framer of the profile finds in these bytes, the profile's own start-up loss aside. */
export function onlyText(profile: ScaleProfile, wire: string): string {
  const framer = profile.createFramer();
  if (profile.id === 'st-gs') framer.push(bytes('\r\n'));
  const framed = framer.push(bytes(wire));
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
export function expectFault(profile: ScaleProfile, wire: string, fault: string): void {
  const text = onlyText(profile, wire);
  expect(profile.decode(text, 'platform', 0)).toEqual({ kind: 'fault', fault, text });
}

function expectMass(actual: number, expected: number): void {
  expect(Object.is(actual, -0)).toBe(false);
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(1e-12 * Math.abs(expected));
}

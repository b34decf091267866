import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type MassUnit, massFrom } from '../../../core/quantity/mass.ts';
import type { Face, Indication } from '../../../hardware/simulator/indication.ts';
import { onlyText } from './expect-decoded.ts';
import { FORMAT_CASES, type FormatCase, settingsFor } from './format-cases.ts';

const step = fc.constantFrom(0.001, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1);
const indication = fc.record({
  steps: fc.integer({ min: -9999, max: 9999 }),
  moving: fc.boolean(),
  net: fc.boolean(),
  range: fc.constant('within' as const),
});

function faceOf(units: readonly MassUnit[]): fc.Arbitrary<Face> {
  return fc
    .tuple(fc.constantFrom(...units), step)
    .map(([unit, size]) => ({ unit, division: massFrom(size, unit) }));
}

function readBack(of: FormatCase, shown: Indication, face: Face) {
  const wire = Buffer.from(of.encode(shown, face)).toString('latin1');
  const profile = of.make(settingsFor(of, face.unit));
  const decoded = profile.decode(onlyText(profile, wire), 'bench', 9);
  if (decoded.kind !== 'reading') throw new Error(`${JSON.stringify(wire)}: ${JSON.stringify(decoded)}`);
  return decoded.reading;
}

describe.each(FORMAT_CASES)('$name', (of) => {
  it('decodes what it encoded: the same weight, and motion and tare as far as it tells them', () => {
    fc.assert(
      fc.property(indication, faceOf(of.units), (shown, face) => {
        const reading = readBack(of, shown, face);
        expect(reading.stability).toBe(shown.moving ? 'moving' : 'stable');
        const told = of.tellsNet === 'always' || (of.tellsNet === 'at-rest' && !shown.moving);
        expect(reading.net).toBe(told && shown.net);
        if (shown.moving && !of.weighsMoving) {
          expect(reading).toMatchObject({ fault: 'not-displayed', mass: { value: 0 } });
          return;
        }
        const exact = shown.steps * face.division.value;
        expect(Math.abs(reading.mass.value - exact)).toBeLessThan(1e-9 * (1 + Math.abs(exact)));
        expect(reading.fault).toBeUndefined();
        expect(reading.division.value).toBeLessThanOrEqual(face.division.value * (1 + 1e-12));
      }),
      { numRuns: 600 },
    );
  });

  it.each(of.tellsRange ? (['over', 'under'] as const) : [])(
    'decodes a scale that is %s as that, with no mass',
    (range) => {
      const face: Face = { unit: 'kg', division: massFrom(0.05, 'kg') };
      const steps = range === 'over' ? 3001 : -61;
      const reading = readBack(of, { steps, moving: false, net: false, range }, face);
      expect(reading).toMatchObject({ fault: range, mass: { value: 0 } });
    },
  );

  it('refuses to encode a number that is too long for its field', () => {
    const face: Face = { unit: 'kg', division: massFrom(0.001, 'kg') };
    const shown = { steps: -1e12, moving: false, net: false, range: 'within' } as const;
    expect(() => of.encode(shown, face)).toThrow(RangeError);
  });
});

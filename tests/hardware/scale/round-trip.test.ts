import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type MassUnit, massFrom } from '../../../core/quantity/mass.ts';
import { SMA } from '../../../hardware/scale/sma.ts';
import { ST_GS } from '../../../hardware/scale/st-gs.ts';
import { encodeSma } from '../../../hardware/simulator/encode-sma.ts';
import { encodeStGs } from '../../../hardware/simulator/encode-st-gs.ts';
import type { Face, Indication } from '../../../hardware/simulator/indication.ts';
import { onlyText } from './expect-decoded.ts';

const unit = fc.constantFrom<MassUnit>('kg', 'g', 'lb', 'oz');
const step = fc.constantFrom(0.001, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1);
const face = fc.tuple(unit, step).map(([of, size]): Face => ({ unit: of, division: massFrom(size, of) }));
const indication = fc.record({
  steps: fc.integer({ min: -9999, max: 9999 }),
  moving: fc.boolean(),
  net: fc.boolean(),
  range: fc.constant('within' as const),
});
const CODECS = [
  ['sma', SMA, encodeSma],
  ['st-gs layout A', ST_GS, (shown: Indication, of: Face) => encodeStGs(shown, of, 'A')],
  ['st-gs layout B', ST_GS, (shown: Indication, of: Face) => encodeStGs(shown, of, 'B')],
] as const;

describe.each(CODECS)('%s', (_name, profile, encode) => {
  it('decodes what it encoded: the same weight, motion and tare', () => {
    fc.assert(
      fc.property(indication, face, (shown, of) => {
        const wire = Buffer.from(encode(shown, of)).toString('latin1');
        const decoded = profile.decode(onlyText(profile, wire), 'bench', 9);
        if (decoded.kind !== 'reading') throw new Error(decoded.kind);
        const { reading } = decoded;
        const exact = shown.steps * of.division.value;
        expect(Math.abs(reading.mass.value - exact)).toBeLessThan(1e-9 * (1 + Math.abs(exact)));
        expect(reading).toMatchObject({ stability: shown.moving ? 'moving' : 'stable', net: shown.net });
        expect(reading.fault).toBeUndefined();
        expect(reading.division.value).toBeLessThanOrEqual(of.division.value * (1 + 1e-12));
      }),
      { numRuns: 1000 },
    );
  });

  it.each(['over', 'under'] as const)('decodes a scale that is %s as that, with no mass', (range) => {
    const of: Face = { unit: 'kg', division: massFrom(0.05, 'kg') };
    const steps = range === 'over' ? 3001 : -61;
    const wire = Buffer.from(encode({ steps, moving: false, net: false, range }, of)).toString('latin1');
    const decoded = profile.decode(onlyText(profile, wire), 'platform', 0);
    expect(decoded).toMatchObject({ kind: 'reading', reading: { fault: range, mass: { value: 0 } } });
  });

  it('refuses to encode a number that is too long for its field', () => {
    const of: Face = { unit: 'kg', division: massFrom(0.001, 'kg') };
    const shown = { steps: -1e10, moving: false, net: false, range: 'within' } as const;
    expect(() => encode(shown, of)).toThrow(RangeError);
  });
});

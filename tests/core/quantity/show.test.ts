import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { grams, kilograms, pounds } from '../../../core/quantity/mass.ts';
import { fromSteps } from '../../../core/quantity/round.ts';
import { showNumber, showRate, showStrength, showVolume, showWeight } from '../../../core/quantity/show.ts';
import { mgPerKg, mgPerMl } from '../../../core/quantity/strength.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { DISPLAY_RULES } from '../../oracles/display.ts';

const anyVolume = fc
  .tuple(fc.integer({ min: 1, max: 30_000 }), fc.constantFrom(0.01, 0.05, 0.1, 0.2, 0.25, 0.5, 1, 5))
  .map(([steps, mark]) => showVolume(millilitres(fromSteps(steps, mark)), millilitres(mark)));

describe('what a dose may look like', () => {
  test.each(DISPLAY_RULES)('$rule ($source)', ({ never, right, wrong }) => {
    expect(wrong).toMatch(never);
    expect(right).not.toMatch(never);
    fc.assert(
      fc.property(anyVolume, (text) => {
        expect(text).not.toMatch(never);
        expect(text).toMatch(/^[\d,.]+ mL$/);
      }),
    );
  });

  test('strengths and rates follow the same rules', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 5000, noNaN: true }), (value) => {
        for (const { never } of DISPLAY_RULES) {
          expect(showStrength(mgPerMl(value))).not.toMatch(never);
          expect(showRate(mgPerKg(value))).not.toMatch(never);
        }
      }),
    );
  });

  test.each([
    [3.3, 0.1, '3.3 mL'],
    [3, 0.1, '3 mL'],
    [0.5, 0.01, '0.5 mL'],
    [0.55, 0.01, '0.55 mL'],
    [1000, 1, '1,000 mL'],
  ])('%d mL on marks of %d is shown "%s"', (ml, mark, text) => {
    expect(showVolume(millilitres(ml), millilitres(mark))).toBe(text);
  });

  test('what is shown reads back as the very volume that is logged', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 30_000 }),
        fc.constantFrom(0.01, 0.05, 0.1, 0.2, 0.25, 0.5, 1),
        (steps, mark) => {
          const volume = fromSteps(steps, mark);
          const shown = showVolume(millilitres(volume), millilitres(mark));
          expect(Number(shown.replace(' mL', '').replaceAll(',', ''))).toBe(volume);
        },
      ),
    );
  });

  test('a strength and a rate show their units', () => {
    expect(showStrength(mgPerMl(49.453))).toBe('49.45 mg/mL');
    expect(showStrength(mgPerMl(181.5))).toBe('181.5 mg/mL');
    expect(showRate(mgPerKg(11.94))).toBe('11.9 mg/kg');
    expect(showRate(mgPerKg(12))).toBe('12 mg/kg');
    expect(showRate(mgPerKg(0.2))).toBe('0.2 mg/kg');
  });

  test('nothing is shown as minus zero', () => {
    expect(showNumber(0, 1)).toBe('0');
    expect(showNumber(-0, 1)).toBe('0');
    expect(showNumber(-0.04, 1)).toBe('0');
  });
});

describe('what a measured weight may look like', () => {
  test.each([
    [pounds(30), 'lb', grams(50), '30.0 lb'],
    [kilograms(40), 'kg', grams(50), '40.00 kg'],
    [kilograms(40), 'kg', grams(100), '40.0 kg'],
    [grams(902.2), 'g', grams(1), '902 g'],
    [grams(1234), 'g', grams(1), '1,234 g'],
    [grams(0.04), 'kg', grams(50), '0.00 kg'],
    [grams(-0.04), 'kg', grams(50), '0.00 kg'],
  ] as const)('a reading keeps its decimals: case %#', (mass, unit, division, text) => {
    expect(showWeight(mass, unit, division)).toBe(text);
  });
});

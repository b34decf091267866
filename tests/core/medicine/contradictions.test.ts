import { describe, expect, test } from 'vitest';
import { ALBENDAZOLE } from '../../../core/formulary/albendazole.ts';
import { FENBENDAZOLE } from '../../../core/formulary/fenbendazole.ts';
import { IVERMECTIN } from '../../../core/formulary/ivermectin.ts';
import { THIAMINE } from '../../../core/formulary/thiamine.ts';
import { Medicine } from '../../../core/medicine/medicine.ts';
import { Liquid, Packet } from '../../../core/medicine/presentation.ts';
import { sameMix } from '../../../core/medicine/printed.ts';
import { Regimen } from '../../../core/medicine/regimen.ts';
import { makePacket, makeRule } from '../make/regimen.ts';

/** A rule whose label prints both units. */
const printed = (value: number, printedMgPerLb: number) => ({
  ...makeRule({}, 'albendazole-sheep'),
  target: { value, printedMgPerLb, evidence: 'primary', source: 'a law text of 2014' },
});
const liquid = (value: number, percent: number) => ({
  ...ALBENDAZOLE.presentations[0],
  strength: { value, percent, evidence: 'primary', source: 'a law text of 2019' },
});
const figure = (value: number) => ({ value, evidence: 'primary' as const, source: 'a packet of the test' });

describe('published text that contradicts itself is refused', () => {
  test.each([
    ['0.2 mg/kg printed as 0.91 mg/lb, ten times too high', 0.2, 0.91, false],
    ['10 mg/kg printed as 2.3 mg/lb, the figure of 5 mg/kg', 10, 2.3, false],
    ['5 mg/kg entered as mg/lb', 5, 5, false],
    ['0.2 mg/kg and 0.0907 mg/lb', 0.2, 0.0907, true],
    ['5 mg/kg and 2.3 mg/lb', 5, 2.3, true],
    ['6 mg/kg and 2.72 mg/lb', 6, 2.72, true],
    ['7.5 mg/kg and 3.4 mg/lb', 7.5, 3.4, true],
    ['10 mg/kg and 4.54 mg/lb', 10, 4.54, true],
  ])('rate: %s', (_what, mgPerKg, mgPerLb, stands) => {
    expect(Regimen.safeParse(printed(mgPerKg, mgPerLb)).success).toBe(stands);
  });

  test.each([
    ['4.45 % where the strength is 45.5 mg/mL', 45.5, 4.45, false],
    ['11.36 % entered as 11.36 mg/mL', 11.36, 11.36, false],
    ['113.6 mg/mL entered as percent', 11.36, 113.6, false],
    ['4.55 % and 45.5 mg/mL', 45.5, 4.55, true],
    ['11.36 % and 113.6 mg/mL', 113.6, 11.36, true],
  ])('strength: %s', (_what, mgPerMl, percent, stands) => {
    expect(Liquid.safeParse(liquid(mgPerMl, percent)).success).toBe(stands);
  });

  test('gross mass: 52 g of powder entered as 52 g of active', () => {
    expect(Packet.safeParse(makePacket({ activeGrams: figure(52) })).success).toBe(false);
    expect(Packet.safeParse(makePacket()).success).toBe(true);
  });

  test('gross mass: the two swapped', () => {
    const { grossGrams, activeGrams } = makePacket();
    const swapped = makePacket({ grossGrams: activeGrams, activeGrams: grossGrams });
    expect(Packet.safeParse(swapped).success).toBe(false);
  });

  test.each([
    ['a quart of 943 mL', 943, 1, 'US quart', false],
    ['a gallon taken for a quart', 3785.411784, 1, 'US quart', false],
    ['a quart taken for a gallon', 946.352946, 1, 'US gallon', false],
    ['an imperial quart taken for a US one', 1136.5225, 1, 'US quart', false],
    ['a quart', 946.352946, 1, 'US quart', true],
    ['3 L', 3000, 3, 'L', true],
  ] as const)('mixed volume: %s', (_what, ml, amount, unit, stands) => {
    const { printedMgPerMl: _, ...packet } = makePacket();
    const madeUpToMl = { ...figure(ml), named: { amount, unit } };
    expect(Packet.safeParse({ ...packet, madeUpToMl }).success).toBe(stands);
  });

  test('mixed strength: 12.4 mg/mL, that of a gallon, printed for a quart', () => {
    expect(Packet.safeParse(makePacket({ printedMgPerMl: 12.4 })).success).toBe(false);
    expect(Packet.safeParse(makePacket({ printedMgPerMl: 49.6 })).success).toBe(true);
  });

  test('mixed strength: about 180 mg/mL passes for 544.5 g in 3 L, which is 181.5', () => {
    expect(sameMix(544.5, 3000, 180)).toBe(true);
    expect(sameMix(544.5, 3000, 145)).toBe(false);
  });

  test('mL for a weight: a decimal slip in the strength', () => {
    const [presentation] = IVERMECTIN.presentations;
    if (presentation?.form !== 'liquid') throw new Error('ivermectin is a liquid');
    for (const slipped of [0.08, 8]) {
      const strength = { value: slipped, evidence: 'primary', source: 'a label of the test' };
      const medicine = { ...IVERMECTIN, presentations: [{ ...presentation, strength }] };
      expect(Medicine.safeParse(medicine).success).toBe(false);
    }
  });

  test('mL for a weight: a table in pounds read as one in kilograms', () => {
    const [goat] = FENBENDAZOLE.regimens;
    const inKg = { ...goat, printed: goat?.printed.map((dose) => ({ ...dose, unit: 'kg' })) };
    expect(Medicine.safeParse({ ...FENBENDAZOLE, regimens: [inKg] }).success).toBe(false);
  });

  test('mL for a weight: a label’s table rounded to 0.1 mL stands, 5.8 % high at its lowest weight', () => {
    expect(FENBENDAZOLE.regimens[0]?.printed).toContainEqual(
      expect.objectContaining({ ml: 0.6, per: 25, unit: 'lb' }),
    );
    expect(Medicine.safeParse(FENBENDAZOLE).success).toBe(true);
  });

  test('mL for a weight without a strength: thiamine ships neither', () => {
    expect(THIAMINE.presentations).toEqual([]);
    expect(THIAMINE.regimens.every(({ target }) => target.evidence === 'unknown')).toBe(true);
    const { strength: _, ...bottle } = liquid(100, 10);
    expect(Liquid.safeParse(bottle).success).toBe(false);
  });

  test('milk: a chart that says none is needed', () => {
    const none = { kind: 'hours', hours: 0, evidence: 'secondary', source: 'a goat chart of 2006' };
    expect(Regimen.safeParse({ ...makeRule(), milk: none }).success).toBe(false);
    expect(Regimen.safeParse({ ...makeRule(), meat: none }).success).toBe(false);
  });
});

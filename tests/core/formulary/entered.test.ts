import { describe, expect, test } from 'vitest';
import { isRefused, sameFigures } from '../../../core/formulary/entered.ts';
import {
  type EnteredPresentation,
  hasPresentation,
  presentationFrom,
} from '../../../core/formulary/entered-presentation.ts';
import { type EnteredRule, ruleFrom } from '../../../core/formulary/entered-rule.ts';
import { FENBENDAZOLE } from '../../../core/formulary/fenbendazole.ts';
import { LEVAMISOLE } from '../../../core/formulary/levamisole.ts';
import { regimenInForce } from '../../../core/medicine/in-force.ts';
import type { Presentation } from '../../../core/medicine/presentation.ts';
import { perKilogram } from '../../../core/medicine/printed.ts';
import type { Regimen } from '../../../core/medicine/regimen.ts';
import { BOTTLE, RULE, SMALL_PACKET, WREN } from '../make/entered.ts';

function presentation(entered: EnteredPresentation, medicine = LEVAMISOLE): Presentation {
  const kept = presentationFrom(medicine, entered, 'own-1', WREN);
  if (isRefused(kept)) throw new Error(kept.detail);
  return kept;
}
function rule(entered: Partial<EnteredRule> = {}): Regimen {
  const kept = ruleFrom({ ...RULE, ...entered }, 'own-1', WREN);
  if (isRefused(kept)) throw new Error(kept.detail);
  return kept;
}

describe('a packet read off its label', () => {
  test('carries who entered it and when with each figure', () => {
    expect(presentation(SMALL_PACKET)).toMatchObject({
      grossGrams: {
        value: 13,
        evidence: 'entered',
        source: 'Entered at Shed by Wren, 2027-04-12, from the label in hand',
      },
      activeGrams: { value: 11.7, evidence: 'entered' },
      // A US quart, of 57.75 cubic inches of 16.387064 mL.
      madeUpToMl: { value: expect.closeTo(946.352946, 6), named: { amount: 1, unit: 'US quart' } },
      jugLifeHours: { value: 12, evidence: 'own-guard' },
    });
  });

  test('takes up the room its powder takes up in the packet that ships', () => {
    const [shipped] = LEVAMISOLE.presentations;
    if (shipped?.form !== 'powder') throw new Error('levamisole is a powder');
    expect(presentation(SMALL_PACKET)).toMatchObject({ volumePerGram: shipped.volumePerGram });
  });

  test('of a powder nothing was read of is doubted widely', () => {
    const kept = presentation(SMALL_PACKET, FENBENDAZOLE);
    if (kept.form !== 'powder') throw new Error('it is a powder');
    expect(kept.volumePerGram).toMatchObject({ low: 0.5, high: 1, evidence: 'own-guard' });
    expect(kept.activeUncertainty.value).toBeGreaterThan(0.02);
  });

  test.each([
    ['52 g named, entered as the active', { grossGrams: 52, activeGrams: 52 }, 'activeGrams', /gross mass/],
    ['the two masses swapped', { grossGrams: 46.8, activeGrams: 52 }, 'activeGrams', /gross mass/],
    [
      '49.6 mg/mL printed for a quart, a gallon entered',
      {
        grossGrams: 52,
        activeGrams: 46.8,
        madeUpTo: { amount: 1, unit: 'US gallon' },
        printedMgPerMl: 49.6,
      } as const,
      'printedMgPerMl',
      /wrong volume/,
    ],
    ['no mass at all', { grossGrams: 0 }, 'grossGrams.value', /./],
  ])('is refused with %s', (_what, over, field, says) => {
    const refused = presentationFrom(LEVAMISOLE, { ...SMALL_PACKET, ...over }, 'own-1', WREN);
    expect(refused).toMatchObject({ field, detail: expect.stringMatching(says) });
  });
});

test('the packet that ships is there already', () => {
  const shipped = presentation({ ...SMALL_PACKET, grossGrams: 52, activeGrams: 46.8 });
  expect(hasPresentation(LEVAMISOLE.presentations, shipped)).toBe(true);
  expect(hasPresentation(LEVAMISOLE.presentations, presentation(SMALL_PACKET))).toBe(false);
});

describe('a bottle read off its label', () => {
  test('has the strength of either unit', () => {
    const of = (mgPerMl: number | null, percent: number | null) =>
      presentation({ ...BOTTLE, mgPerMl, percent });
    expect(of(45.5, 4.55)).toMatchObject({ strength: { value: 45.5, percent: 4.55 }, bottlesMl: [250] });
    expect(of(200, null)).toMatchObject({ strength: { value: 200 } });
    expect(of(null, 20)).toMatchObject({ strength: { value: 200, percent: 20 } });
  });

  test.each([
    ['4.45 % beside 45.5 mg/mL, as a rule prints it', 45.5, 4.45],
    ['mg/mL and percent swapped', 11.36, 113.6],
    ['the percentage entered twice', 11.36, 11.36],
    ['no strength at all', null, null],
  ])('is refused with %s', (_what, mgPerMl, percent) => {
    const refused = presentationFrom(FENBENDAZOLE, { ...BOTTLE, mgPerMl, percent }, 'own-1', WREN);
    expect(refused).toMatchObject({ field: expect.stringMatching(/^strength/) });
  });

  test('is there already only in its own size', () => {
    const bottle = presentation({ ...BOTTLE, mgPerMl: 100, percent: null, bottleMl: 1000 }, FENBENDAZOLE);
    expect(hasPresentation(FENBENDAZOLE.presentations, bottle)).toBe(true);
    const other = presentation({ ...BOTTLE, mgPerMl: 100, percent: null, bottleMl: 1250 }, FENBENDAZOLE);
    expect(hasPresentation(FENBENDAZOLE.presentations, other)).toBe(false);
  });
});

describe('a rule as it was entered', () => {
  test('follows the label in hand, or the veterinarian', () => {
    expect(rule().target).toMatchObject({ value: 5, printedMgPerLb: 2.3, evidence: 'entered' });
    expect(rule().target.source).toBe('Entered at Shed by Wren, 2027-04-12, from the label in hand');
    expect(rule({ use: 'extra-label' }).target.source).toContain('on the veterinarian’s direction');
    expect(rule({ use: 'extra-label' }).notes).toHaveLength(1);
  });

  test('says so where the day was not known', () => {
    const kept = ruleFrom(RULE, 'own-1', { ...WREN, on: null });
    expect(kept).toMatchObject({ target: { source: expect.stringContaining('on a day not known') } });
  });

  test('printed in mg/lb alone is that rate in mg/kg', () => {
    const { target } = rule({ mgPerKg: null, mgPerLb: 2.72 });
    // 21 CFR 522.772 prints 6 mg/kg as 2.72 mg/lb.
    expect(target).toMatchObject({ value: expect.closeTo(6, 1), printedMgPerLb: 2.72 });
    expect(perKilogram(0.45359237)).toBeCloseTo(1, 12);
  });

  test('without a ceiling or an interval stands under our own guards', () => {
    const inForce = regimenInForce(rule(), null);
    expect(inForce?.ceiling).toMatchObject({ value: 7.5, evidence: 'own-guard' });
    expect(inForce?.repeatAfterDays).toMatchObject({ value: 14, evidence: 'own-guard' });
  });

  test('carries every limit that was entered, and no other', () => {
    expect(rule().limits).toEqual({
      minAgeDays: null,
      minWeightKg: null,
      pregnancy: null,
      notInMilk: null,
      notDairy: null,
    });
    const { limits } = rule({
      minAgeDays: 120,
      minWeightKg: 10,
      pregnancy: { afterBredDays: 45, afterMalesDays: 30 },
      milkers: 'not-dairy',
    });
    expect(limits).toMatchObject({
      minAgeDays: { value: 120 },
      minWeightKg: { value: 10 },
      pregnancy: { afterBredDays: { value: 45 }, afterMalesDays: { value: 30 } },
      notInMilk: null,
      notDairy: { evidence: 'entered' },
    });
    expect(rule({ milkers: 'not-in-milk' }).limits).toMatchObject({ notDairy: null, notInMilk: {} });
  });

  test('keeps hours and days as they were entered', () => {
    const { meat, milk } = rule({ meat: { kind: 'hours', hours: 72 }, milk: { kind: 'not-for-people' } });
    expect(meat).toMatchObject({ kind: 'hours', hours: 72, evidence: 'entered' });
    expect(milk.kind).toBe('not-for-people');
  });

  test.each<[string, Partial<EnteredRule>, string, RegExp]>([
    [
      '0.2 mg/kg and 0.91 mg/lb, as a law text prints it',
      { mgPerKg: 0.2, mgPerLb: 0.91 },
      'target',
      /disagree/,
    ],
    ['10 mg/kg and 2.3 mg/lb, as another prints it', { mgPerKg: 10, mgPerLb: 2.3 }, 'target', /disagree/],
    ['a ceiling no higher than the target', { ceiling: 5 }, 'ceiling', /above/],
    ['a floor no lower than the target', { floor: 5 }, 'floor', /below/],
    [
      'no hours of milk, as a chart of 2006 gives',
      { milk: { kind: 'hours', hours: 0 } },
      'milk',
      /never nothing/,
    ],
    ['no rate', { mgPerKg: null, mgPerLb: null }, 'target.value', /./],
  ])('is refused with %s', (_what, over, field, says) => {
    expect(ruleFrom({ ...RULE, ...over }, 'own-1', WREN)).toMatchObject({
      field,
      detail: expect.stringMatching(says),
    });
  });

  test('is the same as one of the same figures, whoever entered it', () => {
    const other = ruleFrom(RULE, 'own-2', { by: 'Finch', on: null });
    expect(sameFigures(rule(), other)).toBe(true);
    expect(sameFigures(rule(), rule({ species: 'sheep' }))).toBe(false);
    expect(sameFigures(rule(), rule({ minAgeDays: 120 }))).toBe(false);
  });
});

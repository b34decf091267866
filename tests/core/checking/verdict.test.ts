import { describe, expect, test } from 'vitest';
import { type CheckSpot, CORNERS } from '../../../core/checking/check-record.ts';
import { KNOWN_WEIGHTS, knownWeight } from '../../../core/checking/known-weight.ts';
import { isWithin, judgeCheck } from '../../../core/checking/verdict.ts';
import { grams } from '../../../core/quantity/mass.ts';
import type { ScaleRole } from '../../../core/weighing/reading.ts';
import { QUART_OF_WATER } from '../../oracles/water.ts';

type Shown = Partial<Record<CheckSpot, number>>;

function weight(role: ScaleRole, id: string) {
  const found = knownWeight(role, id);
  if (found === undefined) throw new Error(`no weight ${id}`);
  return found;
}

/** The findings of a check that showed so many grams at each spot. */
function findings(shown: Shown, id = 'kg-20', role: ScaleRole = 'platform', divisionGrams = 50) {
  const spots = Object.keys(shown) as CheckSpot[];
  return judgeCheck({
    division: grams(divisionGrams),
    weight: weight(role, id),
    second: 'both' in shown ? weight(role, role === 'platform' ? 'kg-10' : 'g-200') : null,
    readings: spots.map((spot) => ({ spot, shown: grams(shown[spot] ?? 0) })),
  });
}

const FLAT = {
  middle: 20_000,
  returned: 0,
  'front-left': 20_000,
  'front-right': 20_000,
  'back-right': 20_000,
  'back-left': 20_000,
} as const;

describe('the verdict', () => {
  test('of a scale that is right everywhere is passed', () => {
    const { verdict, points, corners, rough } = findings(FLAT);
    expect(verdict).toBe('passed');
    expect(points.map(({ error }) => error)).toEqual([0, 0, 0, 0, 0, 0]);
    expect(corners).toEqual({ spread: 0, limit: 1 });
    expect(rough).toBe(false);
  });

  // 20 kg are 400 divisions of 50 g: one division, and 10 g for a weight of 1 part in 2,000, are 1.2 divisions.
  test.each([
    [20_060, 'passed'],
    [20_061, 'failed'],
    [19_940, 'passed'],
    [19_939, 'failed'],
  ] as const)('of 20 kg shown as %d g by steps of 50 g is %s', (shown, verdict) => {
    const found = findings({ ...FLAT, middle: shown });
    expect(found.points[0]?.limit).toBeCloseTo(1.2, 9);
    expect(found.points[0]?.error).toBeCloseTo((shown - 20_000) / 50, 9);
    expect(found.verdict).toBe(verdict);
  });

  // 50 lb are 22,679.6185 g: 2,267.96 divisions of 10 g, so three of them, and 11.34 g for the weight.
  test.each([
    [22_679.6 + 41.3, 'passed'],
    [22_679.6 + 41.4, 'failed'],
  ] as const)('of 50 lb shown as %d g by steps of 10 g is %s', (shown, verdict) => {
    expect(findings({ middle: shown }, 'lb-50', 'platform', 10).verdict).toBe(verdict);
  });

  test('of a scale set to pounds that says kilograms is failed', () => {
    expect(findings({ ...FLAT, middle: 44_092 }).verdict).toBe('failed');
  });

  test.each([
    [50, 'passed'],
    [51, 'failed'],
    [-51, 'failed'],
  ] as const)('of a scale that comes back to %d g is %s', (returned, verdict) => {
    expect(findings({ ...FLAT, returned }).verdict).toBe(verdict);
  });

  test.each(CORNERS)('is failed where the corner %s alone is off', (corner) => {
    const found = findings({ ...FLAT, [corner]: 19_900 });
    expect(found.verdict).toBe('failed');
    expect(found.points.filter((point) => !isWithin(point)).map(({ spot }) => spot)).toEqual([corner]);
  });

  test('is failed where corners are each within their limit, but too far apart', () => {
    const found = findings({ ...FLAT, 'front-left': 20_050, 'back-right': 19_950 });
    expect(found.points.every(isWithin)).toBe(true);
    expect(found.corners).toEqual({ spread: 2, limit: 1 });
    expect(found.verdict).toBe('failed');
  });

  // 30 kg are 600 divisions: two of them, and 10 g + 5 g for the two weights, are 2.3.
  test.each([
    [30_115, 'passed'],
    [30_116, 'failed'],
  ] as const)('of 20 kg and 10 kg shown together as %d g is %s', (both, verdict) => {
    expect(findings({ ...FLAT, both, down: 20_000 }).verdict).toBe(verdict);
  });

  test('is failed where the first weight reads wrong on the way down', () => {
    expect(findings({ ...FLAT, both: 30_000, down: 20_100 }).verdict).toBe('failed');
  });
});

describe('a litre of water', () => {
  test('reads by the published density: a quart of it as the table of water says', () => {
    const quart = QUART_OF_WATER.find(({ celsius }) => celsius === 20);
    const litre = weight('bench', 'water-1').mass.value;
    expect(litre * 0.946352946).toBeCloseTo(quart?.scaleGrams ?? 0, 2);
  });

  test('is weighed in its bottle: what the bottle showed empty is taken off', () => {
    const right = findings({ bottle: 32, middle: 1029, returned: 0 }, 'water-1', 'bench', 1);
    expect(right.points.map(({ spot }) => spot)).toEqual(['middle', 'returned']);
    expect(right.points[0]?.error).toBeCloseTo(1029 - 32 - 997.16, 1);
    expect(right.verdict).toBe('passed');
  });

  test('is a rough weight: 15 g off pass, 20 g do not, and the findings say rough', () => {
    const at = (grams_: number) => findings({ bottle: 30, middle: 30 + grams_ }, 'water-1', 'bench', 1);
    expect(at(982).verdict).toBe('passed');
    expect(at(977).verdict).toBe('failed');
    expect(at(997).rough).toBe(true);
    expect(findings({ middle: 1000 }, 'kg-1', 'bench', 1).rough).toBe(false);
  });
});

test('every weight has an id of its own, and a doubt of at least 1 part in 2,000', () => {
  for (const weights of Object.values(KNOWN_WEIGHTS)) {
    expect(new Set(weights.map(({ id }) => id)).size).toBe(weights.length);
    for (const { mass, doubt } of weights)
      expect(doubt.value / mass.value).toBeGreaterThanOrEqual(0.0005 - 1e-12);
  }
});

test('a weight of the bench is none of the platform', () => {
  expect(knownWeight('platform', 'g-100')).toBeUndefined();
  expect(knownWeight('bench', 'kg-20')).toBeUndefined();
});

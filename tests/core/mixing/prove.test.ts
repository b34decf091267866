import { describe, expect, test } from 'vitest';
import { expectedGross } from '../../../core/mixing/expected-gross.ts';
import type { Jug } from '../../../core/mixing/jug.ts';
import { proveOnBench } from '../../../core/mixing/prove.ts';
import { grams } from '../../../core/quantity/mass.ts';
import { mgPerMl } from '../../../core/quantity/strength.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { makeJug } from '../make/jug.ts';
import { NINE_OCLOCK } from '../make/time.ts';

const IN_A = {
  vesselId: 'vessel-a',
  letter: 'A',
  empty: grams(300),
  contents: grams(954.2),
  uncertainty: grams(1.5),
};
const seven = makeJug({ weighed: IN_A });
/** Half as strong, in a jug of 420 g: two quarts. */
const eight = makeJug({
  id: 'jug-8',
  number: 8,
  strength: mgPerMl(24.727),
  volume: millilitres(1892.7),
  weighed: { ...IN_A, vesselId: 'vessel-b', letter: 'B', empty: grams(420), contents: grams(1898) },
});

function prove(jug: Jug, onBench: number, jugs: readonly Jug[] = [seven, eight]) {
  const there = { mass: grams(onBench), uncertainty: grams(0.58) };
  return proveOnBench(jug, jugs, there, NINE_OCLOCK, true);
}

describe('what a jug should weigh', () => {
  test('is its empty mass and what was put into it', () => {
    expect(expectedGross(seven, grams(0.58))?.mass.value).toBeCloseTo(1254.2, 6);
  });

  test('follows what was drawn, by the mass of a millilitre of the mix', () => {
    const drawn = { ...seven, drawn: millilitres(100) };
    // 954.2 g in 946.353 mL are 1.00829 g/mL.
    expect(expectedGross(drawn, grams(0.58))?.mass.value).toBeCloseTo(1254.2 - 100.829, 3);
  });

  test('is known the less the more was drawn', () => {
    const slack = (draws: number) =>
      expectedGross(
        { ...seven, drawn: millilitres(5 * draws), drawnDoubt: millilitres(0.15 * draws), draws },
        grams(0.58),
      )?.slack.value ?? 0;
    expect(slack(0)).toBeCloseTo(2 * Math.hypot(1.5, 0.58), 6);
    expect(slack(20)).toBeGreaterThan(slack(10));
  });

  test('is not known for a jug whose empty mass was never learned', () => {
    expect(expectedGross(makeJug(), grams(1))).toBeNull();
  });
});

describe('the proof on the bench', () => {
  test.each([
    [1254, 'fits'],
    [1251.2, 'fits'],
    [1262, 'weighs-otherwise'],
    [300, 'weighs-otherwise'],
    [2318, 'weighs-as-another'],
    [3, 'nothing-there'],
  ])('of jug 7 with %d g is "%s"', (onBench, verdict) => {
    expect(prove(seven, onBench).verdict).toBe(verdict);
  });

  test('names the jug that stands there instead', () => {
    expect(prove(seven, 2318)).toMatchObject({ other: { number: 8 } });
  });

  test('says nothing of a jug whose empty mass was never learned', () => {
    expect(prove(makeJug(), 1254).verdict).toBe('weight-unknown');
  });

  test('cannot tell two strengths that weigh the same', () => {
    const twin = { ...seven, id: 'jug-9', number: 9, strength: mgPerMl(24.7) };
    expect(prove(seven, 1254, [seven, twin])).toMatchObject({ verdict: 'fits-two', other: { number: 9 } });
  });

  test('cannot tell one from a jug of its medicine that was never weighed', () => {
    const unweighed = { ...eight, weighed: null };
    expect(prove(seven, 1254, [seven, unweighed]).verdict).toBe('fits-two');
  });

  test('is not spoilt by a jug of another medicine that weighs the same', () => {
    const other = { ...seven, id: 'jug-9', medicineId: 'another' };
    expect(prove(seven, 1254, [seven, other]).verdict).toBe('fits');
  });

  test('is not spoilt by one that was poured away', () => {
    const gone = { ...seven, id: 'jug-9', discardedAtMs: NINE_OCLOCK };
    expect(prove(seven, 1254, [seven, gone]).verdict).toBe('fits');
  });
});

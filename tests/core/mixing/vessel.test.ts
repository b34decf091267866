import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { freshLetter, matchVessel, type Vessel } from '../../../core/mixing/vessel.ts';
import { grams } from '../../../core/quantity/mass.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { makeJug } from '../make/jug.ts';
import { NINE_OCLOCK } from '../make/time.ts';
import { makeVessel } from '../make/vessel.ts';

const A = makeVessel();
const B = makeVessel({ id: 'vessel-b', letter: 'B', empty: grams(420) });
/** Jug 7 stands in A: 300 g of jug and 955 g of mix. */
const IN_A = makeJug({
  weighed: { vesselId: A.id, letter: 'A', empty: A.empty, contents: grams(955), uncertainty: grams(1.5) },
});

function match(onBench: number, vessels: readonly Vessel[] = [A, B], jugs = [IN_A]) {
  return matchVessel(grams(onBench), grams(0.58), vessels, jugs, NINE_OCLOCK);
}

describe('what stands on the bench', () => {
  test.each([
    [300, 'A'],
    [296, 'A'],
    [304, 'A'],
    [420, 'B'],
  ])('%d g is known as the empty jug %s', (onBench, letter) => {
    expect(match(onBench)).toMatchObject({ known: true, vessel: { letter } });
  });

  test('the first jug of a farm is asked about, whatever it weighs', () => {
    expect(match(300, [])).toEqual({ known: false, doubt: { kind: 'first' } });
  });

  test('a jug with something in it is heavier than its empty mass', () => {
    expect(match(340)).toMatchObject({ known: false, doubt: { kind: 'heavier', than: A, by: grams(40) } });
    expect(match(700)).toMatchObject({ known: false, doubt: { kind: 'heavier', than: B, by: grams(280) } });
  });

  test('what is lighter than every known jug is another one', () => {
    expect(match(180)).toMatchObject({ known: false, doubt: { kind: 'lighter', than: A, by: grams(120) } });
  });

  test('a jug in service, set down full, is told by its weight', () => {
    expect(match(1254)).toEqual({ known: false, doubt: { kind: 'holds-mix', jugId: 'jug-7' } });
  });

  test('half drawn, it is told by what is left in it', () => {
    const half = { ...IN_A, drawn: millilitres(473), drawnDoubt: millilitres(8), draws: 100 };
    expect(match(778, [A, B], [half])).toMatchObject({ doubt: { kind: 'holds-mix' } });
  });

  test('poured away, it is no reason to doubt any more', () => {
    const gone = { ...IN_A, discardedAtMs: NINE_OCLOCK };
    expect(match(1254, [A, B], [gone])).toMatchObject({ doubt: { kind: 'heavier' } });
  });

  test('a jug given up is not known', () => {
    expect(match(300, [{ ...A, retiredAtMs: NINE_OCLOCK }])).toMatchObject({ doubt: { kind: 'first' } });
  });

  test('a full jug is never known as an empty one, however it is filled', () => {
    fc.assert(
      fc.property(fc.double({ min: 8, max: 3000, noNaN: true }), (inIt) => {
        expect(match(300 + inIt, [A]).known).toBe(false);
      }),
    );
  });
});

test('letters are given out in order, and a free one again', () => {
  expect(freshLetter([])).toBe('A');
  expect(freshLetter([A, B])).toBe('C');
  expect(freshLetter([{ ...A, retiredAtMs: 1 }, B])).toBe('A');
});

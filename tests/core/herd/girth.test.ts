import { describe, expect, test } from 'vitest';
import { weightByTape } from '../../../core/herd/girth.ts';
import { massIn } from '../../../core/quantity/mass.ts';
import { PRINTED_TAPES } from '../../oracles/herd.ts';

describe('a weight by tape', () => {
  test.each(PRINTED_TAPES)('girth $girth, length $length is $lb lb ($source)', ({ girth, length, lb }) => {
    expect(massIn(weightByTape(girth, length), 'lb')).toBeCloseTo(lb, 9);
  });

  test('of the cattle example is 289 kg, not 10 % more as a metric tape over 600 has it', () => {
    expect(massIn(weightByTape(60, 53), 'kg')).toBeCloseTo(288.5, 1);
  });

  test.each([
    [0, 30],
    [35, 0],
    [-35, 30],
    [Number.NaN, 30],
  ])('girth %d and length %d are refused', (girth, length) => {
    expect(() => weightByTape(girth, length)).toThrow(RangeError);
  });
});

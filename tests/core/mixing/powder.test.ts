import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judgePowder } from '../../../core/mixing/powder.ts';
import { grams } from '../../../core/quantity/mass.ts';

const PACKET = grams(52);

function verdict(rise: number, division = 1) {
  return judgePowder(grams(rise), PACKET, grams(division));
}

describe('the powder on a 1 g scale', () => {
  test.each([
    [0, 'none'],
    [2, 'none'],
    [-900, 'none'],
    [26, 'part'],
    [46.8, 'part'],
    [52, 'whole'],
    [50, 'whole'],
    [54, 'whole'],
    [78, 'too-much'],
    [104, 'too-much'],
  ])('a rise of %d g is "%s"', (rise, expected) => {
    expect(verdict(rise)).toBe(expected);
  });

  test('more powder never looks like less', () => {
    const rank = { none: 0, part: 1, whole: 2, 'too-much': 3 };
    fc.assert(
      fc.property(
        fc.double({ min: -100, max: 300, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.constantFrom(0.1, 0.5, 1, 2, 5),
        (rise, more, division) => {
          expect(rank[verdict(rise + more, division)]).toBeGreaterThanOrEqual(rank[verdict(rise, division)]);
        },
      ),
    );
  });
});

describe('the powder on a coarse scale', () => {
  const divisions = [1, 2, 5, 10, 20, 50];

  test.each(divisions)(
    'with %d g steps, a packet of which a tenth was spilled is never taken for whole',
    (division) => {
      expect(verdict(46.8, division)).not.toBe('whole');
    },
  );

  test.each(divisions)('with %d g steps, two packets are never taken for one', (division) => {
    expect(verdict(104, division)).not.toBe('whole');
  });

  test.each(divisions)('with %d g steps, three packets are never taken for one', (division) => {
    expect(verdict(156, division)).not.toBe('whole');
  });

  test.each(divisions)('with %d g steps, half a packet is never taken for one', (division) => {
    expect(verdict(26, division)).not.toBe('whole');
  });

  test.each(divisions)('with %d g steps, a packet and a half is never taken for one', (division) => {
    expect(verdict(78, division)).not.toBe('whole');
  });
});

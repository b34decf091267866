import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { likeliest } from '../../../core/herd/animal.ts';
import { grams, kilograms } from '../../../core/quantity/mass.ts';
import { makeAnimal } from '../make/animal.ts';
import { hoursAgo } from '../make/time.ts';

function animal(name: string, kg: number | null) {
  const lastWeight = kg === null ? null : { mass: kilograms(kg), atMs: hoursAgo(500) };
  return makeAnimal({ id: name, name, lastWeight });
}

describe('the likeliest animals', () => {
  const herd = [
    animal('Dee', null),
    animal('Cob', 60),
    animal('Ann', 20),
    animal('Bea', 41),
    animal('Abe', null),
  ];

  test('come nearest last weight first, and those never weighed last, by name', () => {
    expect(likeliest(herd, kilograms(40)).map(({ name }) => name)).toEqual([
      'Bea',
      'Cob',
      'Ann',
      'Abe',
      'Dee',
    ]);
  });

  test('are all of the herd, each once, and the herd itself stays in its order', () => {
    const before = [...herd];
    fc.assert(
      fc.property(fc.double({ min: 0, max: 500, noNaN: true }), (kg) => {
        const found = likeliest(herd, kilograms(kg));
        expect(new Set(found)).toEqual(new Set(herd));
        expect(found).toHaveLength(herd.length);
      }),
    );
    expect(herd).toEqual(before);
  });

  test('on an empty deck, or with a weight of nothing on file, come by name and not by chance', () => {
    expect(likeliest(herd, grams(0)).map(({ name }) => name)).toEqual(['Abe', 'Ann', 'Bea', 'Cob', 'Dee']);
    expect(likeliest([animal('Zed', 0), animal('Ann', 90)], kilograms(40))[0]?.name).toBe('Ann');
  });
});

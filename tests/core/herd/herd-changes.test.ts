import { describe, expect, test } from 'vitest';
import { ageDays, comeOfAge } from '../../../core/herd/ageing.ts';
import { leaveHerd } from '../../../core/herd/leave.ts';
import { mergeAnimals, mergeConflicts } from '../../../core/herd/merge.ts';
import { sharedNumbers } from '../../../core/herd/numbers.ts';
import { replaceTag, replaceVisualTag } from '../../../core/herd/retag.ts';
import { DAY_MS } from '../../../core/moment.ts';
import { kilograms } from '../../../core/quantity/mass.ts';
import { makeHerdAnimal } from '../make/herd-animal.ts';

const NOW = 2000 * DAY_MS;
const sold = { kind: 'sold', atMs: NOW, by: 'Ida' } as const;

describe('merging two records of one animal', () => {
  const kept = makeHerdAnimal({
    id: 'a',
    name: 'Anna',
    visualTags: ['12'],
    bornAtMs: null,
    pen: 'north',
    lastWeight: null,
  });
  const gone = makeHerdAnimal({
    id: 'b',
    name: '12',
    tag: '840003123456780',
    class: 'young',
    visualTags: [' 12 ', '7B'],
    bornAtMs: 5 * DAY_MS,
    pen: 'south',
    bredAtMs: 90 * DAY_MS,
    lastWeight: { mass: kilograms(44), atMs: NOW },
  });

  test('takes from the second what the first does not know, and keeps every number', () => {
    const merged = mergeAnimals(kept, gone, { name: 'kept', tag: 'kept' }, NOW, 'Ida');
    if (!merged.ok) throw new Error(merged.why);
    expect(merged.kept).toMatchObject({
      id: 'a',
      name: 'Anna',
      class: 'female',
      tag: kept.tag,
      pen: 'north',
      bornAtMs: 5 * DAY_MS,
      bredAtMs: 90 * DAY_MS,
      visualTags: ['12', '7B'],
      formerTags: [{ number: '840003123456780', untilMs: NOW, why: 'merged' }],
      lastWeight: gone.lastWeight,
    });
    expect(merged.gone).toEqual({ ...gone, life: { kind: 'merged', intoId: 'a', atMs: NOW, by: 'Ida' } });
  });

  test.each([
    ['same-record', kept],
    ['gone', { ...gone, life: sold }],
    ['other-species', { ...gone, species: 'sheep' }],
    ['undecided', gone],
  ] as const)('is refused: %s', (why, second) => {
    expect(mergeAnimals(kept, second, {}, NOW, 'Ida')).toEqual({ ok: false, why });
  });

  const buck = { ...gone, class: 'male', bornAtMs: 6 * DAY_MS } as const;
  const all = ['name', 'class', 'born', 'tag'] as const;
  const known = { ...kept, bornAtMs: 5 * DAY_MS, inMilk: true };

  test('asks about each thing the two say otherwise', () => {
    expect(mergeConflicts(known, buck)).toEqual(all);
    expect(mergeConflicts(kept, gone)).toEqual(['name', 'tag']);
    for (const left of all) {
      const choices = Object.fromEntries(
        all.filter((field) => field !== left).map((field) => [field, 'gone']),
      );
      expect(mergeAnimals(known, buck, choices, NOW, 'Ida')).toEqual({ ok: false, why: 'undecided' });
    }
  });

  test('believes the second where a person says so, and a male is not in milk', () => {
    const choices = { name: 'gone', class: 'gone', born: 'gone', tag: 'gone' } as const;
    expect(mergeAnimals(known, buck, choices, NOW, 'Ida')).toMatchObject({
      ok: true,
      kept: {
        id: 'a',
        name: '12',
        class: 'male',
        inMilk: false,
        bredAtMs: null,
        bornAtMs: 6 * DAY_MS,
        tag: gone.tag,
        formerTags: [{ number: kept.tag, untilMs: NOW, why: 'merged' }],
      },
    });
  });
});

describe('one number on two animals', () => {
  test('is found for tags and names, however they are written, among those on the farm', () => {
    const found = sharedNumbers([
      makeHerdAnimal({ id: 'a', name: 'Anna', visualTags: ['7b'] }),
      makeHerdAnimal({ id: 'b', name: 'Berta', visualTags: ['7 B'] }),
      makeHerdAnimal({ id: 'c', name: 'ANNA', tag: null, visualTags: [] }),
      makeHerdAnimal({ id: 'd', name: 'Anna', life: sold }),
    ]);
    expect(found).toEqual([
      { number: '840003123456789', kind: 'electronic', animalIds: ['a', 'b'] },
      { number: '7b', kind: 'visual', animalIds: ['a', 'b'] },
      { number: 'Anna', kind: 'name', animalIds: ['a', 'c'] },
    ]);
  });

  test('is found between a tag and a name, since many are called by the number they wear', () => {
    const found = sharedNumbers([
      makeHerdAnimal({ id: 'a', name: '417', tag: null, visualTags: [] }),
      makeHerdAnimal({ id: 'b', name: 'Berta', tag: null, visualTags: ['417'] }),
    ]);
    expect(found).toEqual([{ number: '417', kind: 'visual', animalIds: ['b', 'a'].sort() }]);
  });

  test('is not found twice on one animal', () => {
    expect(sharedNumbers([makeHerdAnimal({ visualTags: ['7', ' 7'] })])).toEqual([]);
  });
});

describe('a lost tag', () => {
  const anna = makeHerdAnimal({ visualTags: ['12'] });
  const berta = makeHerdAnimal({ id: 'b', name: 'Berta', tag: '840003123456780', visualTags: ['13'] });

  test('is replaced, and its number kept', () => {
    expect(replaceTag(anna, '840003123456781', NOW, [anna, berta])).toMatchObject({
      ok: true,
      animal: {
        tag: '840003123456781',
        formerTags: [{ number: '840003123456789', untilMs: NOW, why: 'lost' }],
      },
    });
    expect(replaceVisualTag(anna, '12', ' 99 ', NOW, [anna, berta])).toMatchObject({
      animal: { visualTags: ['99'], formerTags: [{ number: '12', untilMs: NOW, why: 'lost' }] },
    });
  });

  test('may be joined by one more', () => {
    expect(replaceVisualTag(anna, null, '99', NOW, [anna])).toMatchObject({
      animal: { visualTags: ['12', '99'], formerTags: [] },
    });
  });

  test.each([
    ['worn-by-another', '840003123456780'],
    ['same-tag', '840003123456789'],
    ['not-15-digits', '84000312345678'],
    ['test-code', '999003123456789'],
  ])('is not replaced: %s', (why, digits) => {
    expect(replaceTag(anna, digits, NOW, [anna, berta])).toMatchObject({ ok: false, why });
  });

  test('can be had again from an animal that is gone', () => {
    const left = { ...berta, life: sold };
    expect(replaceTag(anna, '840003123456780', NOW, [anna, left])).toMatchObject({ ok: true });
    expect(replaceTag(left, '840003123456781', NOW, [anna, left])).toMatchObject({ why: 'gone' });
  });

  test.each([
    ['worn-by-another', '1 3'],
    ['same-tag', '12'],
    ['empty', '  '],
  ])('with a visual number is not replaced: %s', (why, number) => {
    expect(replaceVisualTag(anna, null, number, NOW, [anna, berta])).toMatchObject({ ok: false, why });
  });
});

describe('an animal that leaves', () => {
  test('is kept as gone and out of milk', () => {
    const left = leaveHerd(makeHerdAnimal({ inMilk: true }), 'died', NOW - DAY_MS, 'Ida', NOW);
    expect(left).toMatchObject({
      ok: true,
      animal: {
        inMilk: false,
        tag: '840003123456789',
        life: { kind: 'died', atMs: NOW - DAY_MS, by: 'Ida' },
      },
    });
  });

  test.each([
    ['already-gone', makeHerdAnimal({ life: sold }), NOW],
    ['in-future', makeHerdAnimal(), NOW + 1],
    ['before-birth', makeHerdAnimal({ bornAtMs: 10 * DAY_MS }), 9 * DAY_MS],
  ] as const)('is refused: %s', (why, animal, atMs) => {
    expect(leaveHerd(animal, 'sold', atMs, 'Ida', NOW)).toEqual({ ok: false, why });
  });
});

describe('coming of age', () => {
  const kid = makeHerdAnimal({ class: 'young', bornAtMs: NOW - 365 * DAY_MS });

  test('is asked about at a year for goats, and nothing is changed by itself', () => {
    expect(comeOfAge([kid], NOW)).toEqual([kid]);
    expect(comeOfAge([{ ...kid, bornAtMs: NOW - 364 * DAY_MS }], NOW)).toEqual([]);
    expect(comeOfAge([{ ...kid, species: 'cattle' }], NOW)).toEqual([]);
    expect(
      comeOfAge(
        [
          { ...kid, life: sold },
          { ...kid, class: 'female' },
        ],
        NOW,
      ),
    ).toEqual([]);
  });

  test('needs a birth that is known and past', () => {
    expect(ageDays({ bornAtMs: null }, NOW)).toBeNull();
    expect(ageDays({ bornAtMs: NOW + 1 }, NOW)).toBeNull();
    expect(ageDays({ bornAtMs: NOW - 1.5 * DAY_MS }, NOW)).toBe(1);
  });
});

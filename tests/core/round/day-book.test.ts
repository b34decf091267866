import { describe, expect, test } from 'vitest';
import { earlierDoses, effectOf, pairUp } from '../../../core/round/day-book.ts';
import type { Correction } from '../../../core/round/treatment.ts';
import { makeCorrection, makeEntry, makeTreatment } from '../make/book.ts';

const NOT_GIVEN = { kind: 'not-given' } as const;
const TO_BELLA = { kind: 'wrong-animal', animalId: 'bella' } as const;
const TO_CORA = { kind: 'wrong-animal', animalId: 'cora' } as const;
const THREE_ML = { kind: 'wrong-volume', volumeMl: 3 } as const;
const FOUR_ML = { kind: 'wrong-volume', volumeMl: 4 } as const;

describe('what a treatment means today', () => {
  test.each<[string, Correction['what'][], string | null, number]>([
    ['nothing', [], 'anna', 9.8],
    ['not given', [NOT_GIVEN], null, 0],
    ['the wrong animal', [TO_BELLA], 'bella', 9.8],
    ['the wrong volume', [THREE_ML], 'anna', 3],
    ['the wrong animal, then the wrong volume', [TO_BELLA, THREE_ML], 'bella', 3],
    ['the wrong volume, then the wrong animal', [THREE_ML, TO_BELLA], 'bella', 3],
    ['two animals, one after the other', [TO_BELLA, TO_CORA], 'cora', 9.8],
    ['two volumes, one after the other', [THREE_ML, FOUR_ML], 'anna', 4],
    ['the wrong volume, then not given at all', [THREE_ML, NOT_GIVEN], null, 0],
    ['not given, then that another had it', [NOT_GIVEN, TO_BELLA], 'bella', 9.8],
    ['not given, then that it was another volume', [NOT_GIVEN, THREE_ML], 'anna', 3],
  ])('after correcting %s', (_, chain, animalId, volumeMl) => {
    expect(effectOf(makeEntry(...chain))).toEqual({ animalId, volumeMl });
  });

  test('never changes the treatment that was written', () => {
    const entry = makeEntry(NOT_GIVEN, TO_BELLA);
    const written = JSON.stringify(entry);
    effectOf(entry);
    expect(JSON.stringify(entry)).toBe(written);
    expect(entry.treatment.offer.animal.id).toBe('anna');
  });
});

describe('earlier doses', () => {
  test('are those that went into an animal, under the animal that swallowed them', () => {
    const entries = [makeEntry(), makeEntry(NOT_GIVEN), makeEntry(TO_BELLA)];
    expect(earlierDoses(entries).map(({ animalId }) => animalId)).toEqual(['anna', 'bella']);
  });

  test.each(['part', 'spat-out'] as const)(
    'include a %s dose: twice the dose may be given otherwise',
    (outcome) => {
      const entries = pairUp([makeTreatment({}, outcome)], []);
      expect(earlierDoses(entries)).toHaveLength(1);
    },
  );
});

test('corrections stand beside their own treatment, both in the order given', () => {
  const [one, two] = [makeTreatment({ id: 't-1' }), makeTreatment({ id: 't-2' })];
  const corrections = [
    makeCorrection(THREE_ML, 't-2', 'c-1'),
    makeCorrection(NOT_GIVEN, 't-1', 'c-2'),
    makeCorrection(FOUR_ML, 't-2', 'c-3'),
  ];
  const paired = pairUp([one, two], corrections);
  expect(
    paired.map(({ treatment, corrections: beside }) => [treatment.id, beside.map(({ id }) => id)]),
  ).toEqual([
    ['t-1', ['c-2']],
    ['t-2', ['c-1', 'c-3']],
  ]);
});

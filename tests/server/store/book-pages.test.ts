import { describe, expect, test } from 'vitest';
import { DAY_MS } from '../../../core/moment.ts';
import type { BookFilter, BookLine, BookPlace } from '../../../server/store/book-pages.ts';
import { bookStore, given } from '../make/book.ts';

const BEGIN = Date.UTC(2027, 3, 1, 9);
const nameOf = (line: BookLine) => (line.kind === 'treatment' ? line.entry.treatment.id : line.untreated.id);

/** Ten days: a dose a day of Anna and Bella by turns, every third by Wren, a skip of Cora each fifth day, two corrections. */
function tenDays() {
  const store = bookStore();
  for (let day = 0; day < 10; day += 1) {
    store.dayBook.addTreatment(
      given({
        id: `t${day}`,
        atMs: BEGIN + day * DAY_MS,
        animal: day % 2 === 0 ? 'anna' : 'bella',
        by: day % 3 === 0 ? 'Wren' : 'Kim',
        medicine: day < 5 ? 'levamisole' : 'thiamine',
      }),
    );
    if (day % 5 === 4)
      store.dayBook.addUntreated({
        id: `u${day}`,
        kind: day === 4 ? 'skipped' : 'lapsed',
        animalId: 'cora',
        offerId: null,
        reason: 'later',
        weightGrams: 41_000,
        atMs: BEGIN + day * DAY_MS + 1000,
        by: 'Kim',
        clockTrusted: true,
      });
  }
  const at = { atMs: BEGIN + 20 * DAY_MS, by: 'Kim' };
  store.dayBook.addCorrection({ ...at, id: 'c1', treatmentId: 't2', what: { kind: 'not-given' } });
  store.dayBook.addCorrection({
    ...at,
    id: 'c2',
    treatmentId: 't3',
    what: { kind: 'wrong-animal', animalId: 'dot' },
  });
  return store;
}

describe('the day book by what is asked of it', () => {
  test.each<[string, BookFilter, string[]]>([
    ['everything', {}, ['u9', 't9', 't8', 't7', 't6', 't5', 'u4', 't4', 't3', 't2', 't1', 't0']],
    ['an animal', { animalId: 'anna' }, ['t8', 't6', 't4', 't2', 't0']],
    ['the animal a correction names', { animalId: 'dot' }, ['t3']],
    ['an animal that was only skipped', { animalId: 'cora' }, ['u9', 'u4']],
    ['a person', { by: 'Wren' }, ['t9', 't6', 't3', 't0']],
    ['a medicine', { medicineId: 'thiamine' }, ['t9', 't8', 't7', 't6', 't5']],
    ['a medicine by a person', { medicineId: 'thiamine', by: 'Wren' }, ['t9', 't6']],
    ['days', { fromMs: BEGIN + 3 * DAY_MS, toMs: BEGIN + 5 * DAY_MS }, ['u4', 't4', 't3']],
    ['treatments alone', { kind: 'treatment', fromMs: BEGIN + 8 * DAY_MS }, ['t9', 't8']],
    ['skips', { kind: 'skipped' }, ['u4']],
    ['lapses', { kind: 'lapsed' }, ['u9']],
    ['corrections', { kind: 'corrected' }, ['t3', 't2']],
    ['corrections of an animal', { kind: 'corrected', animalId: 'anna' }, ['t2']],
    ['skips by somebody who skipped none', { kind: 'skipped', by: 'Wren' }, []],
    ['an animal there is not', { animalId: 'nobody' }, []],
  ])('%s', (_, filter, expected) => {
    expect(tenDays().dayBook.page(filter, null, 50).map(nameOf)).toEqual(expected);
  });

  test('page after page tells the same as all at once, from either end', () => {
    const { dayBook } = tenDays();
    const all = dayBook.page({}, null, 50).map(nameOf);
    for (const [read, whole] of [
      [dayBook.page, all],
      [dayBook.pageAfter, [...all].reverse()],
    ] as const) {
      const found: string[] = [];
      let place: BookPlace | null = null;
      for (;;) {
        const lines: BookLine[] = read({}, place, 5);
        found.push(...lines.map(nameOf));
        place = lines.at(-1)?.place ?? null;
        if (place === null) break;
      }
      expect(found).toEqual(whole);
    }
  });

  test('a line of a date nobody trusts stands after the line before it', () => {
    const store = tenDays();
    store.dayBook.addTreatment(given({ id: 'lost', atMs: Date.UTC(2000, 0, 1), trusted: false }));
    expect(store.dayBook.page({}, null, 2).map(nameOf)).toEqual(['lost', 'u9']);
    expect(store.dayBook.page({ fromMs: BEGIN + 9 * DAY_MS }, null, 9).map(nameOf)).toContain('lost');
  });
});

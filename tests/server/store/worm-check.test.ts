import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { ReductionTest } from '../../../core/reduction/reduction-test.ts';
import type { EggRecord } from '../../../core/worms/egg-record.ts';
import { Database } from '../../../server/store/sqlite.ts';
import { createStore } from '../../../server/store/store.ts';
import { testBarn } from '../make/test-barn.ts';

const THIRD = { kind: 'slide', dungGrams: 2, suspensionMl: 60, countedMl: 0.9 } as const;
const TEST: ReductionTest = {
  id: 'test-1',
  medicineId: 'levamisole',
  species: 'goat',
  design: 'unpaired',
  protocol: 'research',
  method: THIRD,
  animals: [
    { animalId: 'goat-2', treatmentId: null },
    { animalId: 'goat-1', treatmentId: null },
  ],
  plannedAtMs: 5,
  by: 'Wren',
  end: null,
};
const COUNT: EggRecord = {
  id: 'count-1',
  animalIds: ['goat-2', 'goat-1'],
  eggs: 17,
  method: THIRD,
  purpose: 'herd',
  test: null,
  takenAtMs: 1000,
  loggedAtMs: 2000,
  by: 'Finch',
};

function file(): string {
  return join(mkdtempSync(join(tmpdir(), 'worms-')), 'kiosk.db');
}

test('counts and tests come back from the disk as they were written', () => {
  const path = file();
  const { store } = testBarn(path);
  const ofTest: EggRecord = {
    ...COUNT,
    id: 'count-2',
    animalIds: ['goat-1'],
    method: { kind: 'told', factor: 16.7 },
    purpose: 'test',
    test: { id: 'test-1', stage: 'after' },
  };
  store.whole(() => {
    store.reductionTests.add(TEST);
    store.eggCounts.add(COUNT);
    store.eggCounts.add(ofTest);
    store.eggCounts.correct({
      id: 'fix-1',
      countId: 'count-1',
      what: { kind: 'other-number', eggs: 71 },
      atMs: 3000,
      by: 'Wren',
    });
    store.reductionTests.end('test-1', { how: 'given-up', atMs: 4000, by: 'Wren' });
  });
  store.close();
  const again = createStore(path);
  expect(again.eggCounts.entries()).toEqual([
    {
      record: COUNT,
      corrections: [
        { id: 'fix-1', countId: 'count-1', what: { kind: 'other-number', eggs: 71 }, atMs: 3000, by: 'Wren' },
      ],
    },
    { record: ofTest, corrections: [] },
  ]);
  expect(again.reductionTests.all()).toEqual([{ ...TEST, end: { how: 'given-up', atMs: 4000, by: 'Wren' } }]);
});

test('nothing of the worm check is edited or deleted on disk', () => {
  const path = file();
  const { store } = testBarn(path);
  store.whole(() => {
    store.reductionTests.add(TEST);
    store.reductionTests.end('test-1', { how: 'judged', atMs: 1, by: 'Wren' });
    store.eggCounts.add(COUNT);
    store.eggCounts.correct({
      id: 'f',
      countId: 'count-1',
      what: { kind: 'taken-back' },
      atMs: 1,
      by: 'Wren',
    });
  });
  expect(() => store.reductionTests.end('test-1', { how: 'judged', atMs: 2, by: 'Wren' })).toThrow(/UNIQUE/);
  store.close();
  const db = new Database(path);
  for (const [table, column] of [
    ['egg_counts', 'eggs'],
    ['egg_count_animals', 'animal'],
    ['egg_count_corrections', 'eggs'],
    ['reduction_tests', 'species'],
    ['reduction_test_animals', 'animal'],
    ['reduction_test_ends', 'how'],
  ] as const) {
    expect(db.prepare(`SELECT count(*) FROM ${table}`).pluck().get()).toBeGreaterThan(0);
    expect(() => db.exec(`UPDATE ${table} SET ${column} = ${column}`)).toThrow(/never edited/);
    expect(() => db.exec(`DELETE FROM ${table}`)).toThrow(/nothing is deleted/);
  }
  db.close();
});

test('the disk itself refuses a count without a method, and one of a test without its sampling', () => {
  const { store } = testBarn();
  const halfSlide = { kind: 'slide', dungGrams: 2, suspensionMl: 60 } as unknown as EggRecord['method'];
  expect(() => store.eggCounts.add({ ...COUNT, method: halfSlide })).toThrow(/CHECK/);
  expect(() => store.eggCounts.add({ ...COUNT, purpose: 'test' })).toThrow(/CHECK/);
  expect(() => store.eggCounts.add({ ...COUNT, animalIds: ['nobody'] })).toThrow(/NOT NULL/);
});

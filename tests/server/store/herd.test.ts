import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { kilograms } from '../../../core/quantity/mass.ts';
import { HERD_SCHEMA } from '../../../server/store/herd-schema.ts';
import { MIGRATIONS, migrate } from '../../../server/store/migrations.ts';
import { openStore } from '../../../server/store/open-store.ts';
import { Database } from '../../../server/store/sqlite.ts';
import { createStore } from '../../../server/store/store.ts';
import { makeTreatment } from '../../core/make/book.ts';
import { makeHerdAnimal } from '../../core/make/herd-animal.ts';

/** A file as it was before the herd was made real, with one animal that a treatment points to. */
function fileBefore(): string {
  const path = join(mkdtempSync(join(tmpdir(), 'herd-')), 'test.sqlite');
  const db = new Database(path);
  const at = MIGRATIONS.indexOf(HERD_SCHEMA);
  for (const step of MIGRATIONS.slice(0, at)) migrate(db, step);
  db.pragma(`user_version = ${at}`);
  db.exec(`
    INSERT INTO animals (id, name, species, class, tag, in_milk, first_weight_g, first_weighed_at_ms)
    VALUES ('a', 'Anna', 'goat', 'female', '840003123456789', 1, 41500, 1000), ('b', 'Bert', 'goat', 'male', NULL, 0, NULL, NULL);
    INSERT INTO jugs (id, number, medicine_id, packet_id, strength_mg_per_ml, strength_uncertainty, volume_ml,
      mixed_at_ms, use_by_ms, mixed_by, clock_trusted) VALUES ('j', 1, 'm', 'p', 50, 0.1, 900, 1, 2, 'w', 1);
  `);
  const record = JSON.stringify(makeTreatment({ id: 't' }));
  db.prepare(
    `INSERT INTO treatments VALUES (1, 't', 'o', 'a', 'j', 'm', 1, 'w', 1000, 1, 1, 'whole', ?)`,
  ).run(record);
  db.close();
  return path;
}

describe('a file of before', () => {
  test('keeps its animals, their weight and what points to them', () => {
    const path = fileBefore();
    const store = createStore(path);
    expect(store.animals.all().map(({ id, name, tag }) => [id, name, tag])).toEqual([
      ['a', 'Anna', '840003123456789'],
      ['b', 'Bert', null],
    ]);
    expect(store.weighings.newest('a', 5)).toMatchObject([
      { mass: { value: 41500 }, atMs: 1000, method: 'imported', uncertainty: null },
    ]);
    expect(store.weighings.newest('b', 5)).toEqual([]);
    store.close();
    const db = openStore(path);
    expect(db.prepare('SELECT animal_id FROM treatments').pluck().all()).toEqual(['a']);
    expect(db.pragma('foreign_key_check')).toEqual([]);
    expect(() => db.exec(`UPDATE animals SET id = 'z' WHERE id = 'a'`)).toThrow(/FOREIGN KEY/);
  });

  test('is left as it was where its rows point to nothing', () => {
    const path = fileBefore();
    const db = new Database(path);
    db.pragma('foreign_keys = OFF');
    db.exec(
      `INSERT INTO corrections (id, treatment_id, kind, at_ms, by) VALUES ('c', 'no such', 'not-given', 1, 'w')`,
    );
    db.close();
    expect(() => openStore(path)).toThrow(/point to nothing/);
    const after = new Database(path);
    expect(after.pragma('user_version', { simple: true })).toBe(MIGRATIONS.indexOf(HERD_SCHEMA));
    expect(after.prepare('SELECT count(*) FROM animals').pluck().get()).toBe(2);
  });
});

describe('animals', () => {
  test('come back with everything that is kept of them', () => {
    const store = createStore(':memory:');
    const animal = makeHerdAnimal({
      visualTags: ['12', 'B 7'],
      formerTags: [{ number: '840003123456700', untilMs: 5, why: 'lost' }],
      pen: 'north',
      mark: 'red',
      photo: 'anna.jpg',
      kiddedAtMs: 1,
      inMilkSinceMs: 2,
      inMilk: true,
      bornAtMs: 3,
      bredAtMs: 4,
      malesRemovedAtMs: 5,
      life: { kind: 'merged', intoId: 'other', atMs: 6, by: 'Kim' },
    });
    store.animals.add(animal, 'Kim');
    expect(store.animals.all()).toEqual([{ ...animal, lastWeight: null }]);
  });

  test('a name and a tag are free again once their wearer has left, not before', () => {
    const store = createStore(':memory:');
    const first = makeHerdAnimal({ id: 'first', lastWeight: null });
    const second = { ...first, id: 'second' };
    store.animals.add(first, 'Kim');
    expect(() => store.animals.add(second, 'Kim')).toThrow('another animal on the farm has this name');
    store.animals.change(first, { ...first, life: { kind: 'sold', atMs: 9, by: 'Kim' } }, 9, 'Kim');
    store.animals.add(second, 'Kim');
    expect(store.animals.all()).toHaveLength(2);
  });

  test('what an animal was before a change is kept beside it, and only what changed', () => {
    const path = join(mkdtempSync(join(tmpdir(), 'herd-')), 'test.sqlite');
    const store = createStore(path);
    const animal = makeHerdAnimal({ lastWeight: null });
    store.animals.add(animal, 'Kim');
    store.animals.change(animal, animal, 10, 'Kim');
    store.animals.change(animal, { ...animal, pen: 'north' }, 11, 'Kim');
    store.close();
    const rows = openStore(path).prepare('SELECT at_ms, by, before, after FROM animal_changes').all();
    expect(rows).toEqual([{ at_ms: 11, by: 'Kim', before: '{"pen":null}', after: '{"pen":"north"}' }]);
  });
});

describe('what was seen', () => {
  test('the same weight of the same time is kept once, another beside it', () => {
    const store = createStore(':memory:');
    const animal = makeHerdAnimal({ id: 'a', lastWeight: null });
    store.animals.add(animal, 'Kim');
    const weighing = {
      mass: kilograms(40),
      uncertainty: kilograms(0.1),
      atMs: 7,
      method: 'scale',
      hoursOffFeed: null,
    } as const;
    store.weighings.add('a', weighing, 'Kim');
    store.weighings.add('a', weighing, 'Kim');
    store.weighings.add('a', { ...weighing, mass: kilograms(41) }, 'Kim');
    store.weighings.add('a', { ...weighing, atMs: 9 }, 'Kim');
    expect(store.weighings.newest('a', 9).map(({ atMs, mass }) => [atMs, mass.value])).toEqual([
      [9, 40_000],
      [7, 41_000],
      [7, 40_000],
    ]);
    expect(store.weighings.newest('a', 1)).toHaveLength(1);
  });

  test.each([
    ['weighings', 'by'],
    ['scores', 'by'],
    ['scores_taken_back', 'by'],
    ['notes', 'by'],
    ['animal_changes', 'by'],
  ])('a row of %s can be neither edited nor deleted', (table, column) => {
    const db = openStore(':memory:');
    db.exec(`
      INSERT INTO animals (id, name, species, class, in_milk) VALUES ('a', 'Anna', 'goat', 'female', 0);
      INSERT INTO weighings VALUES (1, 1, 1000, NULL, 'scale', NULL, 'w');
      INSERT INTO scores (animal, at_ms, by, eyelid) VALUES (1, 1, 'w', 3);
      INSERT INTO scores_taken_back (animal, scored_at_ms, at_ms, by) VALUES (1, 1, 2, 'w');
      INSERT INTO notes (animal, at_ms, by, note) VALUES (1, 1, 'w', 'lame');
      INSERT INTO animal_changes (animal, at_ms, by, before, after) VALUES (1, 1, 'w', '{}', '{}');
    `);
    expect(() => db.exec(`UPDATE ${table} SET ${column} = 'x'`)).toThrow(/never edited/);
    expect(() => db.exec(`DELETE FROM ${table}`)).toThrow(/nothing is deleted/);
    expect(() => db.exec('DELETE FROM animals')).toThrow(/nothing is deleted/);
  });

  test.each(['body = 2.25', 'eyelid = 6', 'soiling = 9'])(
    'a score that is none (%s) is not written',
    (set) => {
      const db = openStore(':memory:');
      db.exec(
        `INSERT INTO animals (id, name, species, class, in_milk) VALUES ('a', 'Anna', 'goat', 'female', 0)`,
      );
      const [column, value] = set.split(' = ');
      expect(() =>
        db.exec(`INSERT INTO scores (animal, at_ms, by, ${column}) VALUES (1, 1, 'w', ${value})`),
      ).toThrow(/CHECK/);
    },
  );
});

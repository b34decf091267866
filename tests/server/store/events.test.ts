import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { EVENT_KINDS, type Event } from '../../../core/hub/event.ts';
import { CLOCK_TOLD_SCHEMA } from '../../../server/store/clock-schema.ts';
import { TOLD_RECORDS } from '../../../server/store/event-kinds.ts';
import { EVENT_SCHEMA } from '../../../server/store/event-schema.ts';
import { createEventStore, endLife } from '../../../server/store/events.ts';
import { MIGRATIONS } from '../../../server/store/migrations.ts';
import { openStore } from '../../../server/store/open-store.ts';
import { Database } from '../../../server/store/sqlite.ts';
import { createStore, type Store } from '../../../server/store/store.ts';
import { restore } from '../../../server/upkeep/restore.ts';
import { bookStore } from '../make/book.ts';
import { writeOneOfEach } from '../make/one-of-each.ts';

/** Tables of records that stay at their kiosk, each with why. */
const STAYS: Readonly<Record<string, string>> = {
  approvals: 'a rule is approved by a person at the kiosk that doses by it',
  book_lines: 'made anew from the records',
  chain: 'each kiosk vouches for its own file',
  egg_count_animals: 'told with the count',
  reduction_test_animals: 'told with the test',
  handled_intents: 'intents of one kiosk',
  settings: 'one kiosk’s',
  upkeep: 'one kiosk’s',
  vessels: 'empty jugs of one shed',
  scale_checks: 'scales of one shed',
  syringe_checks: 'syringes of one shed',
  syringe_checks_forgotten: 'syringes of one shed',
  stock_lots: 'the shelf of one shed',
  stock_events: 'the shelf of one shed',
  weather: 'read in where it is used',
  worm_rules: 'thresholds of one kiosk',
  events: 'what is told',
  kiosk_lives: 'what is told',
  kiosk_self: 'what is told',
  events_waiting: 'what was told elsewhere',
  hub_kiosks: 'names from the hub',
  dosed_apart: 'found again wherever both doses are',
  dosed_apart_seen: 'read at one kiosk',
};

function file(): string {
  return join(mkdtempSync(join(tmpdir(), 'events-')), 'kiosk.sqlite');
}

function toldBy(store: Pick<Store, 'events'>): Event[] {
  return store.events.after(store.events.self().life, 0, 10_000);
}

describe('what a kiosk tells', () => {
  test('a record of every kind tells of itself, in order and without gaps', () => {
    const store = bookStore();
    writeOneOfEach(store);
    const told = toldBy(store);
    expect(new Set(told.map(({ kind }) => kind))).toEqual(new Set(EVENT_KINDS));
    expect(told.map(({ sequence }) => sequence)).toEqual(told.map((_, place) => place + 1));
    expect(new Set(told.map(({ id }) => id)).size).toBe(told.length);
    const clocks = told.map(({ clock }) => clock);
    expect(new Set(clocks).size).toBe(clocks.length);
    expect([...clocks].sort()).toEqual(clocks);
    expect(store.events.self().newest).toBe(told.length);
  });

  test('a new table is either told of or said to stay', () => {
    const db = openStore(':memory:');
    const tables = db
      .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%'")
      .pluck()
      .all() as string[];
    const told = new Set(Object.values(TOLD_RECORDS).map(({ table }) => table));
    expect(tables.filter((name) => !told.has(name) && STAYS[name] === undefined)).toEqual([]);
  });

  test('what is told names animals, tests and treatments by ids that hold on every kiosk', () => {
    const store = bookStore();
    writeOneOfEach(store);
    const body = (kind: string) => toldBy(store).find((event) => event.kind === kind)?.body;
    expect(body('score')).toMatchObject({ animal: 'cora', eyelid: 3 });
    expect(body('weighing')).toMatchObject({ animal: 'cora', mass_g: 41_500 });
    expect(body('egg-count')).toMatchObject({
      id: 'count-1',
      animals: ['cora', 'dot'],
      eggs: 17,
      test: null,
    });
    expect(body('reduction-test')).toMatchObject({ animals: [{ animal: 'cora', treatment_id: 't1' }] });
    expect(body('reduction-test-end')).toMatchObject({ test: 'test-1', how: 'given-up' });
    expect(body('animal-merge')).toMatchObject({ kept: 'anna', gone: 'bella', kind: 'merged' });
    expect(body('jug-discarded')).toEqual({ id: 'jug-8', discarded_at_ms: 9000 });
    expect(body('treatment')).toMatchObject({ id: 't1', offer: { animal: { id: 'cora' } } });
  });

  test('a change of an animal names, field by field, the changes it takes the place of', () => {
    const store = bookStore();
    const [anna] = store.animals.all();
    if (anna === undefined) throw new Error('the herd is not there');
    store.animals.change(anna, { ...anna, pen: 'north' }, 1000, 'Kim');
    store.animals.change({ ...anna, pen: 'north' }, { ...anna, pen: 'south', mark: 'blue' }, 2000, 'Kim');
    const [born, first, second] = toldBy(store).filter(
      ({ body }) => (body as { animal?: string }).animal === anna.id,
    );
    expect(born?.kind).toBe('animal');
    expect(first?.body).toMatchObject({ fields: { pen: 'north' }, over: { pen: [born?.id] } });
    expect(second?.body).toMatchObject({
      fields: { pen: 'south', mark: 'blue' },
      over: { pen: [first?.id], mark: [born?.id] },
    });
  });

  test('a record that is taken back with its transaction tells nothing', () => {
    const store = bookStore();
    const before = toldBy(store);
    expect(() =>
      store.whole(() => {
        store.notes.add('cora', { atMs: 5000, by: 'Kim', note: 'lame' });
        throw new Error('the disk is full');
      }),
    ).toThrow('the disk is full');
    expect(toldBy(store)).toEqual(before);
  });

  test('what was told is neither edited nor deleted', () => {
    const path = file();
    bookStore(path).close();
    const db = openStore(path);
    expect(() => db.exec("UPDATE events SET kind = 'note'")).toThrow('never edited');
    expect(() => db.exec('DELETE FROM events')).toThrow('nothing that was told is deleted');
  });
});

describe('records from before there were events', () => {
  /** A file as it stands when it was just given events: every record, and nothing told. */
  function untoldFile(): string {
    const path = file();
    const store = bookStore(path);
    writeOneOfEach(store);
    store.close();
    const db = new Database(path);
    db.pragma('foreign_keys = OFF');
    db.exec(`DROP INDEX lines_of_a_start; DROP TABLE dosed_apart_seen; DROP TABLE dosed_apart; DROP TABLE hub_kiosks; DROP TABLE events_waiting;
      DROP TABLE events; DROP TABLE kiosk_self; DROP TABLE kiosk_lives; ALTER TABLE book_lines DROP COLUMN received;
      DROP INDEX animals_by_name; DROP INDEX animals_by_tag;
      CREATE UNIQUE INDEX one_animal_a_name ON animals (name) WHERE life = 'present';
      CREATE UNIQUE INDEX one_animal_a_tag ON animals (tag) WHERE life = 'present'`);
    db.exec(`DROP TABLE scores_taken_back; DROP TABLE clock_corrections; ALTER TABLE jugs DROP COLUMN board_start;
      ALTER TABLE jugs DROP COLUMN board_since_ms`);
    db.pragma(`user_version = ${MIGRATIONS.indexOf(EVENT_SCHEMA)}`);
    db.close();
    return path;
  }

  test('each is told once when the file is brought up to date, and not again', () => {
    const db = openStore(untoldFile());
    const rows = Object.values(TOLD_RECORDS).map(
      ({ table, only }) =>
        db
          .prepare(`SELECT count(*) FROM ${table} AS r WHERE ${only ?? 'TRUE'}`)
          .pluck()
          .get() as number,
    );
    const events = createEventStore(db);
    const told = events.after(events.self().life, 0, 1000);
    expect(told.length).toBe(rows.reduce((sum, each) => sum + each, 0));
    // There were no words on the clock then, and no score was taken back.
    const later: readonly string[] = ['clock-correction', 'score-taken-back'];
    const kinds = EVENT_KINDS.filter((kind) => !later.includes(kind));
    expect(new Set(told.map(({ kind }) => kind))).toEqual(new Set(kinds));
    const { name } = db;
    db.close();
    expect(toldBy(createStore(name))).toEqual(told);
  });

  test('nothing is told before what it names', () => {
    const kinds = toldBy(createStore(untoldFile())).map(({ kind }) => kind);
    const inOrder = (one: (typeof kinds)[number], other: (typeof kinds)[number]) =>
      expect(kinds.lastIndexOf(one)).toBeLessThan(kinds.indexOf(other));
    inOrder('animal', 'treatment');
    inOrder('jug', 'treatment');
    inOrder('treatment', 'correction');
    inOrder('treatment', 'reduction-test');
    inOrder('reduction-test', 'egg-count');
    inOrder('egg-count', 'egg-count-correction');
  });
});

test('words on the clock that were kept to their kiosk are told, each once, in another life', () => {
  const path = file();
  const store = bookStore(path);
  writeOneOfEach(store);
  const [before] = toldBy(store).filter(({ kind }) => kind === 'clock-correction');
  const { life } = store.events.self();
  store.close();
  const db = new Database(path);
  db.exec(`DROP INDEX lines_of_a_start; DROP TRIGGER events_are_never_deleted;
    DELETE FROM events WHERE kind = 'clock-correction'; DROP TABLE scores_taken_back`);
  db.pragma(`user_version = ${MIGRATIONS.indexOf(CLOCK_TOLD_SCHEMA)}`);
  db.close();
  const again = createStore(path);
  expect(again.events.self().life).not.toBe(life);
  expect(toldBy(again).map(({ kind, body }) => [kind, body])).toEqual([['clock-correction', before?.body]]);
  again.close();
  expect(toldBy(createStore(path))).toHaveLength(1);
});

describe('records that are put back to an earlier state', () => {
  test('a restored copy begins another life of the same kiosk, whose numbers nobody knows', () => {
    const folder = mkdtempSync(join(tmpdir(), 'events-'));
    const backup = file();
    const store = bookStore(backup);
    const before = store.events.self();
    store.close();
    expect(restore(backup, folder, 'now')).toMatchObject({ ok: true });
    const again = createStore(join(folder, 'byreside.sqlite'));
    const after = again.events.self();
    expect(after.kiosk).toBe(before.kiosk);
    expect(after.life).not.toBe(before.life);
    expect(after.newest).toBe(0);
    expect(again.events.after(before.life, 0, 1000).length).toBe(before.newest);
    again.notes.add('cora', { atMs: 5000, by: 'Kim', note: 'lame' });
    expect(toldBy(again).map(({ sequence, kind }) => [sequence, kind])).toEqual([[1, 'note']]);
  });

  test('what no event tells of, as after a rescue, is told in the new life', () => {
    const path = file();
    bookStore(path).close();
    const db = new Database(path);
    db.exec("INSERT INTO notes (animal, at_ms, by, note) VALUES (1, 5000, 'Kim', 'lame')");
    endLife(db);
    db.close();
    expect(toldBy(createStore(path)).map(({ kind }) => kind)).toEqual(['note']);
  });
});

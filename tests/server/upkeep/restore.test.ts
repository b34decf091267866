import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { Database } from '../../../server/store/sqlite.ts';
import { createStore } from '../../../server/store/store.ts';
import { backUp } from '../../../server/upkeep/back-up.ts';
import { copyDatabase } from '../../../server/upkeep/jobs.ts';
import { restore } from '../../../server/upkeep/restore.ts';
import { verifyFile } from '../../../server/upkeep/verify.ts';
import { bookStore, given } from '../make/book.ts';

/** A data folder with two treatments, its backup, and a third treatment since. */
async function farm() {
  const [data, place] = [
    mkdtempSync(join(tmpdir(), 'restore-data-')),
    mkdtempSync(join(tmpdir(), 'restore-place-')),
  ];
  const database = join(data, 'byreside.sqlite');
  const store = bookStore(database);
  for (const n of [1, 2]) store.dayBook.addTreatment(given({ id: `t${n}`, atMs: n * 1000 }));
  writeFileSync(join(data, 'kiosk.json'), '{}');
  const backup = await backUp(
    place,
    {
      database,
      beside: { '.kiosk.json': join(data, 'kiosk.json'), '.medicines.json': join(data, 'medicines.json') },
      photos: join(data, 'photos'),
    },
    { wallMs: Date.UTC(2027, 3, 12), clockTrusted: true },
    { copy: copyDatabase },
  );
  store.dayBook.addTreatment(given({ id: 't3', atMs: 3000 }));
  return { data, database, store, backup };
}

const idsIn = (file: string) => {
  const db = new Database(file, { readonly: true });
  const ids = db.prepare('SELECT id FROM treatments ORDER BY sequence').pluck().all();
  db.close();
  return ids;
};

test('a copy takes the place of the records, which stay aside, and the kiosk goes on from it', async () => {
  const { data, database, store, backup } = await farm();
  store.close();
  const restored = restore(backup, data, 'then');
  expect(restored).toEqual({
    ok: true,
    kept: join(data, 'before-restore-then'),
    treatments: { now: 2, before: 3 },
    beside: [],
  });
  expect(idsIn(join(data, 'before-restore-then', 'byreside.sqlite'))).toEqual(['t1', 't2', 't3']);
  const after = createStore(database);
  after.dayBook.addTreatment(given({ id: 't4', atMs: 4000 }));
  after.close();
  expect(idsIn(database)).toEqual(['t1', 't2', 't4']);
  expect(verifyFile(database)).toMatchObject({ links: 3, troubles: [] });
});

test('the log of a kiosk that was killed goes aside with its file, and is not read into the copy', async () => {
  const { data, database, store, backup } = await farm();
  const log = readFileSync(`${database}-wal`);
  expect(log.length).toBeGreaterThan(0);
  // As a killed kiosk leaves them: the file without what its log holds.
  const killed = readFileSync(database);
  store.close();
  writeFileSync(database, killed);
  writeFileSync(`${database}-wal`, log);
  expect(restore(backup, data, 'then')).toMatchObject({ ok: true, treatments: { now: 2, before: 3 } });
  expect(existsSync(`${database}-wal`)).toBe(false);
  expect(idsIn(database)).toEqual(['t1', 't2']);
  expect(idsIn(join(data, 'before-restore-then', 'byreside.sqlite'))).toEqual(['t1', 't2', 't3']);
});

test('nothing is touched while the kiosk runs', async () => {
  const { data, database, store, backup } = await farm();
  const before = readdirSync(data);
  expect(restore(backup, data, 'then')).toMatchObject({ ok: false, why: expect.stringContaining('running') });
  expect(readdirSync(data)).toEqual(before);
  store.dayBook.addTreatment(given({ id: 't4', atMs: 4000 }));
  store.close();
  expect(idsIn(database)).toEqual(['t1', 't2', 't3', 't4']);
});

test('a ruined database makes room for the copy and stays aside as it was', async () => {
  const { data, database, store, backup } = await farm();
  store.close();
  const ruin = Buffer.alloc(20_000, 0x5a);
  writeFileSync(database, ruin);
  expect(restore(backup, data, 'then')).toMatchObject({ ok: true, treatments: { now: 2, before: null } });
  expect(readFileSync(join(data, 'before-restore-then', 'byreside.sqlite'))).toEqual(ruin);
});

test('into an empty folder the small files come back too', async () => {
  const { store, backup } = await farm();
  store.close();
  const empty = join(mkdtempSync(join(tmpdir(), 'restore-new-')), 'data');
  expect(restore(backup, empty, 'then')).toMatchObject({ ok: true, kept: null, beside: ['kiosk.json'] });
  expect(idsIn(join(empty, 'byreside.sqlite'))).toEqual(['t1', 't2']);
});

test('a copy that is damaged, foreign, of a later program or not there is refused, and nothing is touched', async () => {
  const { data, database, store, backup } = await farm();
  store.whole(() => {
    for (let n = 4; n < 40; n += 1) store.dayBook.addTreatment(given({ id: `t${n}`, atMs: n * 1000 }));
  });
  store.close();
  const before = readFileSync(database);
  const bad = join(data, 'bad.sqlite');
  const damaged = readFileSync(database);
  damaged.fill(0x5a, damaged.length - 40_000, damaged.length - 8000);
  writeFileSync(bad, damaged);
  expect(restore(bad, data, 'a')).toMatchObject({ ok: false, why: expect.stringContaining('damaged') });
  writeFileSync(bad, 'a shopping list, not a database, and long enough to be looked at');
  expect(restore(bad, data, 'b')).toMatchObject({ ok: false });
  writeFileSync(bad, readFileSync(backup));
  const later = new Database(bad);
  later.pragma('user_version = 9999');
  later.close();
  expect(restore(bad, data, 'c')).toMatchObject({ ok: false, why: expect.stringContaining('update') });
  expect(restore(join(data, 'none.sqlite'), data, 'd')).toMatchObject({ ok: false });
  expect(readFileSync(database)).toEqual(before);
  expect(readdirSync(data).some((name) => name.startsWith('before-restore'))).toBe(false);
});

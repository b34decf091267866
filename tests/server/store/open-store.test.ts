import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { MIGRATIONS } from '../../../server/store/migrations.ts';
import { openStore } from '../../../server/store/open-store.ts';
import { Database } from '../../../server/store/sqlite.ts';

function freshPath(): string {
  return join(mkdtempSync(join(tmpdir(), 'store-')), 'test.sqlite');
}

test('a new file is brought to the newest version and every commit is made to reach the disk', () => {
  const db = openStore(freshPath());
  expect(db.pragma('user_version', { simple: true })).toBe(MIGRATIONS.length);
  expect(db.pragma('synchronous', { simple: true })).toBe(2);
  expect(db.pragma('journal_mode', { simple: true })).toBe('wal');
});

test('opening a second time keeps the version and still makes every commit reach the disk', () => {
  const path = freshPath();
  openStore(path).close();
  const db = openStore(path);
  expect(db.pragma('user_version', { simple: true })).toBe(MIGRATIONS.length);
  expect(db.pragma('synchronous', { simple: true })).toBe(2);
  expect(db.pragma('foreign_keys', { simple: true })).toBe(1);
});

test('a file of a later program is refused and left as it was', () => {
  const path = freshPath();
  const db = new Database(path);
  db.pragma('user_version = 9999');
  db.close();
  expect(() => openStore(path)).toThrow(/update the program/);
  expect(new Database(path).pragma('user_version', { simple: true })).toBe(9999);
});

test.each([
  'treatments',
  'corrections',
  'untreated',
  'approvals',
  'scale_checks',
  'syringe_checks',
  'syringe_checks_forgotten',
])('a row of %s can be neither edited nor deleted', (table) => {
  const db = openStore(':memory:');
  db.pragma('foreign_keys = OFF');
  const rows: Record<string, string> = {
    treatments: `INSERT INTO treatments VALUES (1,'t','o','a','j','m',1,'w',1000,1,1,'whole','{}')`,
    corrections: `INSERT INTO corrections (id, treatment_id, kind, at_ms, by) VALUES ('c','t','not-given',1,'w')`,
    untreated: `INSERT INTO untreated (id, kind, at_ms, by) VALUES ('u','skipped',1,'w')`,
    approvals: `INSERT INTO approvals (regimen_id, kind, at_ms, by) VALUES ('r','approved',1,'w')`,
    scale_checks: `INSERT INTO scale_checks VALUES (1,'s','bench','failed',1,'w',1,'{}')`,
    syringe_checks_forgotten: `INSERT INTO syringe_checks_forgotten VALUES (1,'y',1,'w')`,
    syringe_checks: `INSERT INTO syringe_checks VALUES (1,'y','s',3,0.1,0.1,1,'w',1,'{}')`,
  };
  db.exec(rows[table] ?? '');
  expect(() => db.exec(`UPDATE ${table} SET sequence = 2`)).toThrow(/never edited/);
  expect(() => db.exec(`DELETE FROM ${table}`)).toThrow(/nothing is deleted/);
  expect(db.prepare(`SELECT count(*) FROM ${table}`).pluck().get()).toBe(1);
});

import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { CHAIN_SCHEMA, type ChainTrouble, chainRecords } from '../../../server/store/chain.ts';
import { openStore } from '../../../server/store/open-store.ts';
import { Database } from '../../../server/store/sqlite.ts';
import { createStore } from '../../../server/store/store.ts';
import { verifyFile, verifyLines } from '../../../server/upkeep/verify.ts';
import { bookStore, given } from '../make/book.ts';

/** A file with four treatments, a correction and a skip. */
function writtenFile(): string {
  const path = join(mkdtempSync(join(tmpdir(), 'chain-')), 'test.sqlite');
  const store = bookStore(path);
  for (const n of [1, 2, 3]) store.dayBook.addTreatment(given({ id: `t${n}`, atMs: n * 1000 }));
  store.dayBook.addCorrection({
    id: 'c1',
    treatmentId: 't2',
    what: { kind: 'wrong-volume', volumeMl: 3 },
    atMs: 4000,
    by: 'Kim',
  });
  store.dayBook.addTreatment(given({ id: 't4', atMs: 5000 }));
  store.dayBook.addUntreated({
    id: 'u1',
    kind: 'skipped',
    animalId: 'anna',
    offerId: null,
    reason: 'later',
    weightGrams: 40_000,
    atMs: 6000,
    by: 'Kim',
    clockTrusted: true,
  });
  store.close();
  return path;
}

/** Changes a file past the kiosk, as a person with another program would. */
function tamper(path: string, sql: string): void {
  const db = new Database(path);
  db.pragma('foreign_keys = OFF');
  const guards = db.prepare("SELECT name FROM sqlite_schema WHERE type = 'trigger'").pluck().all();
  for (const name of guards as string[]) db.exec(`DROP TRIGGER ${name}`);
  db.exec(sql);
  db.close();
}

function found(path: string): ChainTrouble[] {
  return [...verifyFile(path).troubles];
}

test('what only the kiosk wrote is found whole, and the newest link vouches for it', () => {
  const path = writtenFile();
  const report = verifyFile(path);
  expect(report).toMatchObject({ links: 6, troubles: [] });
  expect(report.head).toMatch(/^[0-9a-f]{64}$/);
  expect(verifyLines(path, report)[0]).toContain(report.head);
});

describe('a file changed past the kiosk is told, and where', () => {
  const cases: readonly (readonly [string, string, ChainTrouble[]])[] = [
    [
      'a volume in its column',
      'UPDATE treatments SET volume_ml = 9 WHERE sequence = 2',
      [{ what: 'edited', kind: 'treatment', sequence: 2 }],
    ],
    [
      'one letter in a record',
      `UPDATE treatments SET record = replace(record, 'Kim', 'Kin') WHERE sequence = 3`,
      [{ what: 'edited', kind: 'treatment', sequence: 3 }],
    ],
    [
      'a correction',
      `UPDATE corrections SET volume_ml = 2`,
      [{ what: 'edited', kind: 'correction', sequence: 1 }],
    ],
    ['a skip', `UPDATE untreated SET by = 'Lee'`, [{ what: 'edited', kind: 'untreated', sequence: 1 }]],
    [
      'a record taken out',
      'DELETE FROM treatments WHERE sequence = 1',
      [{ what: 'gone', kind: 'treatment', sequence: 1 }],
    ],
    [
      'a record taken out with its link',
      `DELETE FROM treatments WHERE sequence = 3; DELETE FROM chain WHERE kind = 'treatment' AND sequence = 3`,
      [{ what: 'link-gone', kind: 'link', sequence: 4 }],
    ],
    [
      'the newest taken out with its link',
      `DELETE FROM untreated; DELETE FROM chain WHERE link = 6`,
      [
        { what: 'end-gone', kind: 'link', sequence: 6 },
        { what: 'end-gone', kind: 'untreated', sequence: 1 },
      ],
    ],
    [
      'a record put in',
      `INSERT INTO corrections (id, treatment_id, kind, at_ms, by) VALUES ('x', 't1', 'not-given', 1, 'w')`,
      [{ what: 'not-linked', kind: 'correction', sequence: 2 }],
    ],
    [
      'two records in each other’s place',
      `UPDATE treatments SET sequence = 99 WHERE sequence = 1; UPDATE treatments SET sequence = 1 WHERE sequence = 2;
       UPDATE treatments SET sequence = 2 WHERE sequence = 99`,
      [
        { what: 'edited', kind: 'treatment', sequence: 1 },
        { what: 'edited', kind: 'treatment', sequence: 2 },
      ],
    ],
  ];
  test.each(cases)('%s', (_, sql, troubles) => {
    const path = writtenFile();
    tamper(path, sql);
    expect(found(path)).toEqual(troubles);
  });

  test('a link', () => {
    const path = writtenFile();
    tamper(path, `UPDATE chain SET hash = randomblob(32) WHERE link = 2`);
    // The link and the one made from it: what lies between the two is where somebody was.
    expect(found(path)).toEqual([
      { what: 'edited', kind: 'treatment', sequence: 2 },
      { what: 'edited', kind: 'treatment', sequence: 3 },
    ]);
  });
});

test('records of before the chain are linked when the file is brought up to date', () => {
  const path = writtenFile();
  tamper(path, 'DROP TABLE chain');
  expect(() => verifyFile(path)).toThrow(/start the kiosk/);
  const db = new Database(path);
  db.exec(CHAIN_SCHEMA);
  chainRecords(db);
  db.close();
  expect(verifyFile(path)).toMatchObject({ links: 6, troubles: [] });
});

test('a link is neither edited nor deleted by the kiosk', () => {
  const db = openStore(writtenFile());
  expect(() => db.exec('UPDATE chain SET sequence = 9')).toThrow(/never edited/);
  expect(() => db.exec('DELETE FROM chain')).toThrow(/nothing is deleted/);
  db.close();
});

test('a record that could not be written leaves no link', () => {
  const path = writtenFile();
  const store = createStore(path);
  expect(() =>
    store.whole(() => {
      store.dayBook.addTreatment(given({ id: 't5', atMs: 7000 }));
      throw new Error('the disk refused');
    }),
  ).toThrow('the disk refused');
  store.dayBook.addTreatment(given({ id: 't6', atMs: 8000 }));
  store.close();
  expect(verifyFile(path)).toMatchObject({ links: 7, troubles: [] });
});

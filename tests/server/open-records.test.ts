import { closeSync, mkdtempSync, openSync, readFileSync, writeFileSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { KioskConfig } from '../../server/config/kiosk-config.ts';
import { NOTHING_OWN } from '../../server/formulary/own-medicines.ts';
import { openRecords } from '../../server/open-records.ts';
import { PAGE_BYTES } from '../../server/store/open-store.ts';
import { Database } from '../../server/store/sqlite.ts';
import { bookStore, given } from './make/book.ts';

/** A data folder as a killed kiosk leaves it, with one page of a table ruined, or the first bytes of the file. */
function ruined(what: 'header' | 'approvals') {
  const dataFolder = mkdtempSync(join(tmpdir(), 'records-'));
  const file = join(dataFolder, 'byreside.sqlite');
  const store = bookStore(file);
  store.dayBook.addTreatment(given({ id: 't1', atMs: 1000 }));
  store.checkpoint();
  // A log would hold the first page anew, and with it the header: then there is nothing to tell.
  if (what !== 'header') store.dayBook.addTreatment(given({ id: 't2', atMs: 2000 }));
  const [bytes, log] = [readFileSync(file), readFileSync(`${file}-wal`)];
  const roots = new Database(file, { readonly: true });
  const root = roots.prepare('SELECT rootpage FROM sqlite_schema WHERE name = ?').pluck().get('approvals');
  roots.close();
  store.close();
  writeFileSync(file, bytes);
  writeFileSync(`${file}-wal`, log);
  const handle = openSync(file, 'r+');
  const [at, length] = what === 'header' ? [0, 40] : [(Number(root) - 1) * PAGE_BYTES, PAGE_BYTES];
  writeSync(handle, Buffer.alloc(length, 0x5a), 0, length, at);
  closeSync(handle);
  return { dataFolder, file };
}

test.each(['header', 'approvals'] as const)(
  'records with a ruined %s are told of, not worked on, and left as they were',
  (what) => {
    const { dataFolder, file } = ruined(what);
    const [bytes, log] = [readFileSync(file), readFileSync(`${file}-wal`)];
    const opened = openRecords({
      setup: { kind: 'real', config: KioskConfig.parse({}) },
      dataFolder,
      ownMedicines: NOTHING_OWN,
      wallMs: 0,
      log: () => {},
    });
    expect(opened).toMatchObject({ file: null, problem: { code: 'store-damaged', file } });
    expect(opened.memory.recent).toEqual([]);
    opened.store.close();
    expect(readFileSync(file).equals(bytes)).toBe(true);
    expect(readFileSync(`${file}-wal`).equals(log)).toBe(true);
  },
);

import { closeSync, openSync, readFileSync, writeFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { PAGE_BYTES } from '../../server/store/open-store.ts';
import { Database } from '../../server/store/sqlite.ts';
import { putToWork, startForTest } from './at-work.ts';
import { databaseOf, farmFolder, kill } from './farm.ts';
import { acknowledged, post } from './ledger.ts';

function overwrite(file: string, at: number, length: number): void {
  const handle = openSync(file, 'r+');
  writeSync(handle, Buffer.alloc(length, 0x5a), 0, length, at);
  closeSync(handle);
}

/** The first page of the tree of a table or index. */
function rootOf(file: string, name: string): number {
  const db = new Database(file, { readonly: true });
  const root = db.prepare('SELECT rootpage FROM sqlite_schema WHERE name = ?').pluck().get(name) as number;
  db.close();
  return root;
}

describe('a database', () => {
  test.each([
    ['with its first page ruined', 0, PAGE_BYTES],
    ['that is no database', 0, 40],
  ])('%s is said so, nothing is logged, and the file stays as it was', async (_, at, length) => {
    const folder = farmFolder();
    overwrite(databaseOf(folder), at, length);
    const before = readFileSync(databaseOf(folder));
    const kiosk = await startForTest(folder);
    expect((await kiosk.state()).problem).toMatchObject({ code: 'store-damaged' });
    expect(await kiosk.send({ type: 'safety-read' })).toMatchObject({ code: 'not-configured' });
    await kill(kiosk, 'SIGTERM');
    expect(readFileSync(databaseOf(folder)).equals(before)).toBe(true);
  });

  test('with a page ruined that is read at the start is said so, and stays as it was', async () => {
    const folder = farmFolder();
    const file = databaseOf(folder);
    overwrite(file, (rootOf(file, 'approvals') - 1) * PAGE_BYTES, PAGE_BYTES);
    const before = readFileSync(file);
    const kiosk = await startForTest(folder);
    expect((await kiosk.state()).problem).toMatchObject({ code: 'store-damaged' });
    await kill(kiosk, 'SIGTERM');
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  test('with a page ruined that nobody reads is found by the check, and nothing more is written', async () => {
    const folder = farmFolder();
    const file = databaseOf(folder);
    overwrite(file, (rootOf(file, 'weather') - 1) * PAGE_BYTES, PAGE_BYTES);
    const kiosk = await startForTest(folder);
    const found = await kiosk.until((s) => s.problem !== null, 'the damage found');
    expect(found.problem).toMatchObject({
      code: 'store-damaged',
      remedy: expect.stringContaining('restore'),
    });
    const [before, log] = [readFileSync(file), readFileSync(`${file}-wal`)];
    expect(await kiosk.send({ type: 'set-face', face: 'glare' })).toMatchObject({ code: 'not-configured' });
    await kill(kiosk, 'SIGTERM');
    expect(readFileSync(file).equals(before)).toBe(true);
    expect(readFileSync(`${file}-wal`).equals(log)).toBe(true);
  });
});

test('a log torn by a crash loses no commit before the tear, and the kiosk works on', async () => {
  const folder = farmFolder();
  const file = databaseOf(folder);
  const kiosk = await startForTest(folder);
  const { ledger } = await putToWork(kiosk);
  await kill(kiosk);
  const log = readFileSync(`${file}-wal`);
  // A frame that was never committed, half there.
  writeFileSync(`${file}-wal`, Buffer.concat([log, log.subarray(32, 32 + 2000)]));
  const after = await startForTest(folder);
  expect((await after.state()).problem).toBeNull();
  for (const sent of acknowledged(ledger, 'give-group'))
    expect(await post(after.base, sent)).toMatchObject({ ok: true, repeated: true });
});

test('a configuration that cannot be read means no devices and no doses, and never the demo', async () => {
  const folder = farmFolder();
  writeFileSync(join(folder, 'kiosk.json'), '{"people": ["Wr');
  const kiosk = await startForTest(folder);
  expect(await kiosk.state()).toMatchObject({ demo: false, problem: { code: 'config-unreadable' } });
  expect(await kiosk.send({ type: 'safety-read' })).toMatchObject({ code: 'not-configured' });
});

test('own medicines that cannot be read leave the kiosk working without them, say so, and are not written over', async () => {
  const folder = farmFolder();
  const text = '[{"addTo": "thiam';
  writeFileSync(join(folder, 'medicines.json'), text);
  const kiosk = await startForTest(folder);
  const state = await kiosk.state();
  expect(state.problem).toBeNull();
  expect(state.shed.formularyTrouble).toHaveLength(1);
  await kiosk.send({
    type: 'keep-presentation',
    medicineId: 'thiamine',
    presentation: { form: 'liquid', mgPerMl: 200, percent: 20, bottleMl: 100, openLifeDays: null },
  });
  expect(readFileSync(join(folder, 'medicines.json'), 'utf8')).toBe(text);
});

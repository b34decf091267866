import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { DAY_MS, HOUR_MS } from '../../../core/moment.ts';
import { PAGE_BYTES } from '../../../server/store/open-store.ts';
import { Database } from '../../../server/store/sqlite.ts';
import { type BackedUp, backUp } from '../../../server/upkeep/back-up.ts';
import { type BackupsOptions, createBackups } from '../../../server/upkeep/backups.ts';
import { checkFile, copyDatabase } from '../../../server/upkeep/jobs.ts';
import { verifyFile } from '../../../server/upkeep/verify.ts';
import { bookStore, given } from '../make/book.ts';
import { HandClock } from '../make/test-barn.ts';

const jobs = { copy: copyDatabase };

/** A data folder at work, with a place to copy to. */
function rig(over: Partial<BackupsOptions> = {}) {
  const base = mkdtempSync(join(tmpdir(), 'backups-'));
  const place = join(base, 'stick');
  mkdirSync(place);
  const database = join(base, 'byreside.sqlite');
  const store = bookStore(database);
  store.dayBook.addTreatment(given({ id: 't1', atMs: 1000 }));
  writeFileSync(join(base, 'kiosk.json'), '{"people":["Kim"]}');
  mkdirSync(join(base, 'photos'));
  writeFileSync(join(base, 'photos', 'a.jpg'), 'a picture');
  const what: BackedUp = {
    database,
    beside: { '.kiosk.json': join(base, 'kiosk.json'), '.medicines.json': join(base, 'medicines.json') },
    photos: join(base, 'photos'),
  };
  const clock = new HandClock();
  const logged: string[] = [];
  const sticks = { now: [] as string[] };
  const backups = createBackups({
    what,
    folder: place,
    sticks: () => sticks.now,
    jobs,
    store,
    clock,
    changed: () => {},
    log: (message) => logged.push(message),
    ...over,
  });
  return { base, place, database, store, what, clock, logged, sticks, backups };
}

const copiesIn = (folder: string) => readdirSync(folder).filter((name) => name.endsWith('.sqlite'));

describe('a backup', () => {
  test('holds what was logged, in one file that needs nothing beside it, with what goes along', async () => {
    const { place, what, clock, store } = rig();
    const file = await backUp(place, what, { wallMs: clock.wallMs, clockTrusted: true }, jobs);
    store.dayBook.addTreatment(given({ id: 't2', atMs: 2000 }));
    expect(verifyFile(file)).toMatchObject({ links: 1, troubles: [] });
    const copy = new Database(file, { readonly: true });
    expect(copy.pragma('journal_mode', { simple: true })).toBe('delete');
    copy.close();
    expect(readdirSync(place).sort()).toEqual([
      'byreside-20270412T120000Z.kiosk.json',
      'byreside-20270412T120000Z.sqlite',
      'photos',
    ]);
    expect(readFileSync(join(place, 'photos', 'a.jpg'), 'utf8')).toBe('a picture');
  });

  test('made while records are written holds some of them whole, in their order', async () => {
    const { place, what, store } = rig();
    let written = 1;
    const writing = setInterval(() => {
      written += 1;
      store.dayBook.addTreatment(given({ id: `t${written}`, atMs: written * 1000 }));
    }, 1);
    const file = await backUp(place, what, { wallMs: Date.UTC(2027, 3, 12), clockTrusted: true }, jobs);
    clearInterval(writing);
    const { links, troubles } = verifyFile(file);
    expect(troubles).toEqual([]);
    expect(links).toBeGreaterThanOrEqual(1);
    expect(links).toBeLessThanOrEqual(written);
  });

  test('that fails leaves nothing behind, and what was there stays', async () => {
    const { place, what } = rig();
    await backUp(place, what, { wallMs: 0, clockTrusted: true }, jobs);
    const before = readdirSync(place).sort();
    const failing = {
      copy: async (_: string, to: string) => {
        writeFileSync(to, 'half');
        throw Object.assign(new Error('no room'), { code: 'ENOSPC' });
      },
    };
    await expect(backUp(place, what, { wallMs: DAY_MS, clockTrusted: true }, failing)).rejects.toThrow(
      'no room',
    );
    expect(readdirSync(place).sort()).toEqual(before);
  });

  test('of a damaged file is not kept', async () => {
    const { place, what, store, database } = rig();
    store.whole(() => {
      for (let n = 2; n < 60; n += 1) store.dayBook.addTreatment(given({ id: `t${n}`, atMs: n * 1000 }));
    });
    store.close();
    const bytes = readFileSync(database);
    bytes.fill(0x5a, bytes.length - PAGE_BYTES * 12, bytes.length - PAGE_BYTES * 4);
    writeFileSync(database, bytes);
    expect(checkFile(database, 'quick').length).toBeGreaterThan(0);
    await expect(backUp(place, what, { wallMs: 0, clockTrusted: true }, jobs)).rejects.toThrow(
      /not whole|malformed/,
    );
    expect(copiesIn(place)).toEqual([]);
  });

  test('takes the remains of one that was cut off away', async () => {
    const { place, what } = rig();
    writeFileSync(join(place, '.byreside-20270101T000000Z.sqlite.part'), 'half');
    await backUp(place, what, { wallMs: 0, clockTrusted: true }, jobs);
    expect(readdirSync(place).some((name) => name.endsWith('.part'))).toBe(false);
  });

  test('drops the old ones with what went along, and none under a clock nobody trusts', async () => {
    const { place, what } = rig();
    const old = (day: number) => `byreside-2020010${day}T000000Z`;
    for (const day of [1, 2, 3]) {
      writeFileSync(join(place, `${old(day)}.sqlite`), '');
      writeFileSync(join(place, `${old(day)}.kiosk.json`), '{}');
    }
    for (let day = 0; day < 7; day += 1)
      writeFileSync(join(place, `byreside-2027040${day + 1}T000000Z.sqlite`), '');
    const wallMs = Date.UTC(2027, 3, 12);
    await backUp(place, what, { wallMs, clockTrusted: false }, jobs);
    expect(copiesIn(place)).toContain(`${old(1)}.sqlite`);
    await backUp(place, what, { wallMs, clockTrusted: true }, jobs);
    expect(copiesIn(place)).not.toContain(`${old(1)}.sqlite`);
    expect(existsSync(join(place, `${old(1)}.kiosk.json`))).toBe(false);
    // The newest of its month.
    expect(copiesIn(place)).toContain(`${old(3)}.sqlite`);
  });
});

describe('the keeper of backups', () => {
  test('copies once a day by itself, and tells when and where', async () => {
    const { place, backups, clock } = rig();
    expect(backups.view()).toMatchObject({ places: [place], last: null, overdue: true });
    await backups.whereDue();
    await backups.whereDue();
    expect(copiesIn(place)).toHaveLength(1);
    expect(backups.view()).toMatchObject({
      last: { at: '2027-04-12T12:00:00.000Z', place },
      overdue: false,
      trouble: null,
    });
    clock.pass(21 * HOUR_MS);
    await backups.whereDue();
    expect(copiesIn(place)).toHaveLength(2);
    clock.pass(9 * DAY_MS);
    expect(backups.view().overdue).toBe(true);
  });

  test('copies to a stick that was plugged in, into a folder of its own', async () => {
    const { base, backups, sticks, clock } = rig({ folder: null });
    await backups.whereDue();
    expect(backups.view()).toMatchObject({ places: [], last: null });
    const stick = join(base, 'plugged');
    mkdirSync(stick);
    sticks.now = [stick];
    clock.pass(4000);
    await backups.whereDue();
    expect(copiesIn(join(stick, 'byreside-backups'))).toHaveLength(1);
  });

  test('does not copy anew to a stick that has a copy of today', async () => {
    const { backups, place, clock } = rig();
    writeFileSync(join(place, 'byreside-20270412T080000Z.sqlite'), '');
    await backups.whereDue();
    expect(copiesIn(place)).toHaveLength(1);
    clock.pass(17 * HOUR_MS);
    await backups.whereDue();
    expect(copiesIn(place)).toHaveLength(2);
  });

  test('copies at once when told to, unless there is nowhere to', async () => {
    const { backups, place } = rig();
    await backups.whereDue();
    expect(backups.now()).toBe(true);
    expect(backups.now()).toBe(false);
    expect(backups.view().running).toBe(true);
    await expect.poll(() => backups.view().running).toBe(false);
    // The same second, so the same name.
    expect(copiesIn(place)).toHaveLength(1);
    expect(rig({ folder: null }).backups.now()).toBe(false);
  });

  test.each([
    ['ENOSPC', 'full'],
    ['EIO', 'gone'],
    ['EACCES', 'not-written'],
  ])('tells of %s as %s, and tries again in an hour', async (code, trouble) => {
    let failing = true;
    const { backups, clock, place, logged } = rig({
      jobs: {
        copy: (file, to) =>
          failing ? Promise.reject(Object.assign(new Error(code), { code })) : copyDatabase(file, to),
      },
    });
    await backups.whereDue();
    expect(backups.view()).toMatchObject({ trouble, last: null });
    expect(logged).toHaveLength(1);
    failing = false;
    clock.pass(59 * 60_000);
    await backups.whereDue();
    expect(copiesIn(place)).toEqual([]);
    clock.pass(60_000);
    await backups.whereDue();
    expect(backups.view()).toMatchObject({ trouble: null, last: { place } });
  });

  test('makes no folder where a disk should be mounted', async () => {
    const { backups, base } = rig({ folder: '/no/such/place' });
    await backups.whereDue();
    expect(existsSync('/no/such/place')).toBe(false);
    expect(readdirSync(base)).not.toContain('no');
    expect(backups.now()).toBe(true);
    await expect.poll(() => backups.view().trouble).toBe('gone');
  });
});

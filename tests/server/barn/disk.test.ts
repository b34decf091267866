import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Disk, diskTroubleOf, watchDisk } from '../../../server/barn/disk.ts';
import { Database } from '../../../server/store/sqlite.ts';
import { bringToOffer, GOAT, standingOffer, testBarn } from '../make/test-barn.ts';

function watched(over: Partial<Parameters<typeof watchDisk>[0]> = {}) {
  const told: string[] = [];
  const probes = { failing: null as Error | null, made: 0 };
  const disk = watchDisk({
    folder: mkdtempSync(join(tmpdir(), 'disk-')),
    probe: () => {
      probes.made += 1;
      if (probes.failing !== null) throw probes.failing;
    },
    log: (message) => told.push(message),
    ...over,
  });
  return { disk, told, probes };
}

const refused = (code: string) => Object.assign(new Error(code), { code });

describe('an error says what is wrong with the disk', () => {
  test.each([
    ['SQLITE_FULL', 'full'],
    ['ENOSPC', 'full'],
    ['SQLITE_READONLY', 'read-only'],
    ['SQLITE_READONLY_DBMOVED', 'read-only'],
    ['EROFS', 'read-only'],
    ['SQLITE_IOERR_FSYNC', 'failing'],
    ['EIO', 'failing'],
    ['SQLITE_CORRUPT_VTAB', 'damaged'],
    ['SQLITE_NOTADB', 'damaged'],
    ['SQLITE_CONSTRAINT_UNIQUE', null],
    ['SQLITE_BUSY', null],
    ['ENOENT', null],
  ])('%s: %s', (code, trouble) => {
    expect(diskTroubleOf(refused(code))).toBe(trouble);
  });

  test('a fault of the program is not the disk’s', () => {
    expect(diskTroubleOf(new TypeError('x is not a function'))).toBeNull();
    expect(diskTroubleOf(null)).toBeNull();
  });

  test('the codes are those that SQLite gives', () => {
    const db = new Database(':memory:');
    db.exec('CREATE TABLE t (x)');
    db.pragma('max_page_count = 2');
    let error: unknown = null;
    try {
      db.prepare('INSERT INTO t VALUES (zeroblob(100000))').run();
    } catch (thrown) {
      error = thrown;
    }
    expect(diskTroubleOf(error)).toBe('full');
  });
});

describe('a disk that is watched', () => {
  test('is full below the room it must have, and well again above it', () => {
    const { disk } = watched({ leastFree: Number.MAX_SAFE_INTEGER });
    disk.look(0);
    expect(disk.trouble()).toBe('full');
    const { disk: roomy } = watched({ leastFree: 1 });
    roomy.look(0);
    expect(roomy.trouble()).toBeNull();
  });

  test('that refused a write is well only once it took one, and is looked at now and then', () => {
    const { disk, told, probes } = watched({ leastFree: 1 });
    expect(disk.failed(refused('SQLITE_FULL'))).toBe(true);
    probes.failing = refused('SQLITE_FULL');
    disk.look(0);
    expect(disk.trouble()).toBe('full');
    probes.failing = null;
    disk.look(4999);
    expect(disk.trouble()).toBe('full');
    disk.look(5000);
    expect(disk.trouble()).toBeNull();
    expect(probes.made).toBe(2);
    expect(told).toEqual(['the disk is full', 'the disk keeps records again']);
  });

  test('under a damaged file stays so', () => {
    const { disk, probes } = watched({ leastFree: 1 });
    disk.foundDamaged();
    disk.failed(refused('SQLITE_FULL'));
    disk.look(0);
    expect(disk.trouble()).toBe('damaged');
    expect(probes.made).toBe(0);
  });

  test('is told of where its folder is gone', () => {
    const { disk } = watched({ folder: '/no/such/folder' });
    disk.look(0);
    expect(disk.trouble()).toBe('failing');
  });
});

describe('a barn whose disk', () => {
  /** A barn with a disk that can be told what to be. */
  function barnOnDisk() {
    const { disk, probes } = watched({ leastFree: 1 });
    const barn = testBarn(':memory:', undefined, { disk });
    return { barn, disk, probes };
  }

  function step(barn: ReturnType<typeof testBarn>, disk: Disk, code: string) {
    barn.clock.pass(6000);
    disk.failed(refused(code));
    barn.barn.tick();
  }

  test('takes nothing offers no dose, and offers it once it does', () => {
    const { barn, disk, probes } = barnOnDisk();
    probes.failing = refused('SQLITE_FULL');
    disk.failed(refused('SQLITE_FULL'));
    expect(() => bringToOffer(barn)).toThrow('no offer stands: cautions');
    const { phase } = barn.barn.context.memory.round;
    expect(phase).toMatchObject({ decision: { cautions: [{ code: 'not-kept', strength: 'stop' }, {}] } });
    barn.clock.pass(6000);
    barn.barn.tick();
    expect(barn.barn.context.memory.round.phase.step).toBe('cautions');
    probes.failing = null;
    barn.clock.pass(6000);
    barn.barn.tick();
    expect(standingOffer(barn).animal.id).toBe(GOAT.id);
  });

  test('fails under an offer lets that one be logged yet', () => {
    const { barn, disk, probes } = barnOnDisk();
    const offerId = bringToOffer(barn);
    probes.failing = refused('SQLITE_FULL');
    step(barn, disk, 'SQLITE_FULL');
    expect(disk.trouble()).toBe('full');
    expect(standingOffer(barn).id).toBe(offerId);
    expect(barn.send({ type: 'give', offerId, outcome: 'whole' })).toMatchObject({ ok: true });
  });

  test('is damaged does nothing more: no intent, no reading, no lapse', () => {
    const { barn, disk } = barnOnDisk();
    const offerId = bringToOffer(barn);
    disk.foundDamaged();
    const { memory } = barn.barn.context;
    const writes = barn.store.handled.writes();
    expect(barn.send({ type: 'give', offerId, outcome: 'whole' })).toMatchObject({ code: 'not-written' });
    barn.weigh(0, 3000);
    barn.clock.pass(3_600_000);
    barn.barn.tick();
    barn.barn.linkChanged('platform', false);
    expect(barn.barn.context.memory).toBe(memory);
    expect(barn.store.handled.writes()).toBe(writes);
  });
});

import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../../hardware/simulator/random.ts';
import { PAGE_BYTES } from '../../../server/store/open-store.ts';
import { Database } from '../../../server/store/sqlite.ts';
import { createStore } from '../../../server/store/store.ts';
import { checkFile } from '../../../server/upkeep/jobs.ts';
import { rescue, rescueLines } from '../../../server/upkeep/rescue/rescue.ts';
import { verifyFile } from '../../../server/upkeep/verify.ts';
import { bookStore, given } from '../make/book.ts';

const PAGE = PAGE_BYTES;
const TREATMENTS = 200;

/** A file with two hundred treatments, some corrections and many weights, as a kiosk leaves it: with a log beside it. */
function written(closed: boolean): { file: string; bytes: Buffer; log: Buffer } {
  const file = join(mkdtempSync(join(tmpdir(), 'rescue-')), 'byreside.sqlite');
  const store = bookStore(file);
  store.whole(() => {
    for (let n = 1; n <= TREATMENTS - 10; n += 1)
      store.dayBook.addTreatment(
        given({ id: `t${n}`, animal: n % 2 === 0 ? 'anna' : 'bella', atMs: n * 1000 }),
      );
    for (let n = 1; n <= 500; n += 1)
      store.weighings.add(
        'cora',
        {
          mass: { unit: 'g', value: 40_000 + n },
          uncertainty: null,
          atMs: n * 1000,
          method: 'scale',
          hoursOffFeed: null,
        },
        'Kim',
      );
  });
  store.checkpoint();
  // What follows stands in the log alone.
  for (let n = TREATMENTS - 9; n <= TREATMENTS; n += 1)
    store.whole(() => store.dayBook.addTreatment(given({ id: `t${n}`, animal: 'dot', atMs: n * 1000 })));
  if (closed) store.close();
  return { file, bytes: readFileSync(file), log: closed ? Buffer.alloc(0) : readFileSync(`${file}-wal`) };
}

/** Writes what is left of a file, and of its log, and rescues it. */
function rescueOf(bytes: Buffer, log: Buffer | null = null) {
  const folder = mkdtempSync(join(tmpdir(), 'damaged-'));
  const [file, out] = [join(folder, 'byreside.sqlite'), join(folder, 'out.sqlite')];
  writeFileSync(file, bytes);
  if (log !== null) writeFileSync(`${file}-wal`, log);
  const report = rescue(file, out);
  expect(readFileSync(file).equals(bytes)).toBe(true);
  return { out, report, said: rescueLines(report).join('\n') };
}

function treatmentsIn(file: string): number[] {
  const db = new Database(file, { readonly: true });
  const ids = db.prepare('SELECT id FROM treatments ORDER BY sequence').pluck().all() as string[];
  db.close();
  return ids.map((id) => Number(id.slice(1)));
}

/** The new file is one a kiosk can work on: whole, up to date, and written to. */
function isUsable(out: string): void {
  expect(checkFile(out, 'whole')).toEqual([]);
  const store = createStore(out);
  const [newest] = store.dayBook.newest(1);
  const drawn = newest === undefined ? null : store.dayBook.drawn(newest.treatment.offer.jug.id);
  expect(drawn?.draws ?? 1).toBeGreaterThan(0);
  store.dayBook.addUntreated({
    id: 'u9999',
    kind: 'skipped',
    animalId: null,
    offerId: null,
    reason: 'later',
    weightGrams: null,
    atMs: 9_999_000,
    by: 'Kim',
    clockTrusted: true,
  });
  store.close();
}

const whole = written(false);
const closed = written(true);

describe('of a file that is whole', () => {
  test('everything comes out, with what stands in the log alone', () => {
    const { out, report } = rescueOf(whole.bytes, whole.log);
    expect(report).toMatchObject({ lost: [], chain: { links: TREATMENTS, troubles: [] } });
    expect(report.rows).toMatchObject({ treatments: TREATMENTS, weighings: 500, animals: 5, jugs: 2 });
    const read = (path: string, table: string) => {
      const db = new Database(path, { readonly: true });
      const rows = db.prepare(`SELECT * FROM ${table} ORDER BY 1, 2`).all();
      db.close();
      return rows;
    };
    for (const table of ['treatments', 'weighings', 'animals', 'jugs', 'chain', 'sqlite_sequence'])
      expect(read(out, table)).toEqual(read(whole.file, table));
    isUsable(out);
  });

  test('a new file is never written over one that is there', () => {
    expect(() => rescue(whole.file, closed.file)).toThrow(/there already/);
    expect(() => rescue('/no/such/file', join(tmpdir(), `none-${process.pid}.sqlite`))).toThrow();
  });
});

describe('of a log', () => {
  test('that is missing, what the file holds comes out', () => {
    const { out, report } = rescueOf(whole.bytes);
    expect(treatmentsIn(out)).toHaveLength(TREATMENTS - 10);
    expect(report.lost).toEqual([]);
    isUsable(out);
  });

  test('that is damaged in the middle, the commits before the damage come out and the rest is told', () => {
    const log = Buffer.from(whole.log);
    const middle = Math.floor(log.length / 2);
    log[middle] = (log[middle] ?? 0) ^ 0xff;
    const { out, said } = rescueOf(whole.bytes, log);
    const found = treatmentsIn(out).length;
    expect(found).toBeGreaterThan(TREATMENTS - 10);
    expect(found).toBeLessThan(TREATMENTS);
    expect(said).toMatch(/the log: \d+ pages behind its last readable commit/);
    // As SQLite itself reads it.
    const folder = mkdtempSync(join(tmpdir(), 'same-'));
    writeFileSync(join(folder, 'a.sqlite'), whole.bytes);
    writeFileSync(join(folder, 'a.sqlite-wal'), log);
    expect(treatmentsIn(join(folder, 'a.sqlite'))).toHaveLength(found);
    isUsable(out);
  });

  test('that is cut off or is no log, no more is lost than stood in it', () => {
    expect(
      treatmentsIn(rescueOf(whole.bytes, whole.log.subarray(0, -700)).out).length,
    ).toBeGreaterThanOrEqual(TREATMENTS - 1);
    expect(treatmentsIn(rescueOf(whole.bytes, Buffer.from('not a log')).out)).toHaveLength(TREATMENTS - 10);
  });
});

describe('of a file with pages overwritten', () => {
  test.each([1, 2, 3, 4, 5, 6, 7, 8])(
    'seed %i: most comes out, what is missing is told, the rest is true',
    (seed) => {
      const random = seededRandom(seed);
      const bytes = Buffer.from(closed.bytes);
      const pages = bytes.length / PAGE;
      const ruined = Array.from({ length: 6 }, () => 1 + Math.floor(random() * (pages - 1)));
      for (const page of ruined)
        for (let at = 0; at < PAGE; at += 1) bytes[page * PAGE + at] = Math.floor(random() * 256);
      const { out, report, said } = rescueOf(bytes);
      const found = treatmentsIn(out);
      expect(found.length).toBeGreaterThan(TREATMENTS / 2);
      if (found.length < TREATMENTS) expect(said).toMatch(/treatments: /);
      // No record that came out is other than it was written.
      const edited =
        report.chain?.troubles.filter(({ what }) => what === 'edited' || what === 'not-linked') ?? [];
      const linksLost = /chain: /.test(said);
      if (!linksLost) expect(edited).toEqual([]);
      isUsable(out);
    },
  );

  test('the first page: the way to the rows is lost, the treatments and weights are found nevertheless', () => {
    const bytes = Buffer.from(closed.bytes);
    bytes.fill(0x5a, 0, PAGE);
    const { out, report } = rescueOf(bytes);
    expect(treatmentsIn(out)).toEqual(Array.from({ length: TREATMENTS }, (_, i) => i + 1));
    expect(report.rows['weighings']).toBeGreaterThan(400);
    expect(report.chain?.troubles).toEqual([]);
    isUsable(out);
  });

  test('the animals and jugs: those that were dosed are made anew', () => {
    const db = new Database(closed.file, { readonly: true });
    const root = db.prepare<[string], number>('SELECT rootpage FROM sqlite_schema WHERE name = ?').pluck();
    const pages = ['animals', 'jugs'].map((name) => root.get(name) as number);
    db.close();
    const bytes = Buffer.from(closed.bytes);
    for (const page of pages) bytes.fill(0x5a, (page - 1) * PAGE, page * PAGE);
    const { out, said } = rescueOf(bytes);
    expect(treatmentsIn(out)).toHaveLength(TREATMENTS);
    for (const name of ['anna', 'bella', 'dot']) expect(said).toContain(`animal ${name} was made anew`);
    const store = createStore(out);
    expect(
      store.animals
        .all()
        .map(({ name }) => name)
        .sort(),
    ).toEqual(['anna', 'bella', 'dot']);
    expect(store.jugs.find('jug-7')?.discardedAtMs).not.toBeNull();
    expect(store.dayBook.ofAnimal('anna', 500)).toHaveLength((TREATMENTS - 10) / 2);
    store.close();
    isUsable(out);
  });

  test('one bit in a record: the row comes out, and the chain names it', () => {
    const bytes = Buffer.from(closed.bytes);
    const at = bytes.lastIndexOf('"by":"Kim"');
    bytes[at + 6] = (bytes[at + 6] ?? 0) ^ 0x01;
    const { out, report } = rescueOf(bytes);
    expect(treatmentsIn(out)).toHaveLength(TREATMENTS);
    expect(report.chain?.troubles).toMatchObject([{ what: 'edited', kind: 'treatment' }]);
    expect(verifyFile(out).troubles).toEqual(report.chain?.troubles);
  });
});

describe('of a file that was cut off', () => {
  test.each([
    [0.9, 120],
    [0.6, 60],
    [0.3, 1],
  ])('at %f of its length, what stood before comes out', (share, least) => {
    const { out, said } = rescueOf(closed.bytes.subarray(0, Math.floor(closed.bytes.length * share)));
    expect(said).toMatch(/cannot be read/);
    expect(treatmentsIn(out).length).toBeGreaterThanOrEqual(least);
    isUsable(out);
  });

  test('to nothing, an empty file comes out that a kiosk can begin on', () => {
    const { out, report } = rescueOf(Buffer.alloc(0));
    expect(Object.values(report.rows).every((count) => count === 0)).toBe(true);
    isUsable(rescueOf(Buffer.from('x')).out);
    expect(treatmentsIn(out)).toEqual([]);
  });
});

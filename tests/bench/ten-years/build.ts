import { newcomer } from '../../../core/herd/herd-animal.ts';
import { HOUR_MS } from '../../../core/moment.ts';
import { type Db, openStore } from '../../../server/store/open-store.ts';
import { createStore, type Store } from '../../../server/store/store.ts';
import { makeAnimal } from '../../core/make/animal.ts';
import { makeJug } from '../../core/make/jug.ts';
import { createBulk, inBulk } from './bulk.ts';
import {
  A_JUG_LASTS,
  animalId,
  correctionOf,
  givenAt,
  jugId,
  medicineOf,
  TEN_YEARS,
  treatmentOf,
  untreatedAfter,
} from './years.ts';

/** What a share of ten years came to on disk. */
export interface Built {
  readonly treatments: number;
  readonly weighings: number;
  readonly bytes: number;
  readonly bytesATreatment: number;
  readonly bytesAWeighing: number;
  readonly seconds: number;
}

/**
 * Writes the newest share of the ten years to a file that is not there yet: all the animals, and as many rows a day as
 * in the whole, over fewer days. So a screen that shows what is newest shows the very same rows whatever the share.
 *
 * Treatments, lines and weights go in past the stores and without waiting for the disk, in the order of their dates;
 * corrections go through the stores, which file their lines anew. Indexes are made once the rows are there, so they are
 * somewhat denser than those of a kiosk. That the lines are those the kiosk would file is for `checkLines` to tell.
 */
export function buildYears(path: string, share: number): Built {
  const began = performance.now();
  const [treatments, weighings] = [
    Math.round(TEN_YEARS.treatments * share),
    Math.round(TEN_YEARS.weighings * share),
  ];
  const first = TEN_YEARS.treatments - treatments;
  const store = createStore(path);
  furnish(store, first);
  store.close();
  const db = openStore(path);
  inBulk(db);
  const empty = sizeOf(db);
  addTreatments(db, first);
  const uncorrected = sizeOf(db);
  addWeighings(db, weighings);
  const weighed = sizeOf(db);
  db.close();
  correct(path, first);
  const whole = openStore(path);
  whole.pragma('wal_checkpoint(TRUNCATE)');
  const bytes = sizeOf(whole);
  whole.close();
  return {
    treatments,
    weighings,
    bytes,
    bytesATreatment: (bytes - (weighed - uncorrected) - empty) / treatments,
    bytesAWeighing: (weighed - uncorrected) / weighings,
    seconds: (performance.now() - began) / 1000,
  };
}

/** Writes the animals, and the jugs that the treatments from a first one on were given from. */
export function furnish(store: Store, first: number): void {
  store.whole(() => {
    for (let i = 0; i < TEN_YEARS.animals; i += 1) {
      const tag = `840003${String(i).padStart(9, '0')}`;
      const animal = makeAnimal({ id: animalId(i), name: `G ${i}`, tag, lastWeight: null });
      store.animals.add(newcomer(animal), 'Wren');
    }
    for (let jug = Math.floor(first / A_JUG_LASTS); jug * A_JUG_LASTS < TEN_YEARS.treatments; jug += 1) {
      const atMs = givenAt(jug * A_JUG_LASTS);
      const mixed = { mixedAtMs: atMs - HOUR_MS, useByMs: atMs + 11 * HOUR_MS };
      const id = jugId(jug);
      store.jugs.add(makeJug({ id, number: jug + 1, medicineId: medicineOf(jug), ...mixed }));
      if ((jug + 1) * A_JUG_LASTS < TEN_YEARS.treatments)
        store.jugs.discard(id, givenAt((jug + 1) * A_JUG_LASTS));
    }
  });
}

function addTreatments(db: Db, first: number): void {
  const indexes = db
    .prepare<[], { name: string; sql: string }>(
      `SELECT name, sql FROM sqlite_master WHERE type = 'index' AND tbl_name = 'book_lines' AND sql IS NOT NULL`,
    )
    .all();
  for (const { name } of indexes) db.exec(`DROP INDEX ${name}`);
  const bulk = createBulk(db);
  db.transaction(() => {
    for (let i = first; i < TEN_YEARS.treatments; i += 1) {
      bulk.addTreatment(treatmentOf(i));
      const untreated = untreatedAfter(i);
      if (untreated !== null) bulk.addUntreated(untreated);
    }
  })();
  for (const { sql } of indexes) db.exec(sql);
}

/** Weights in the order they were taken, each animal's a little heavier every time until it is shorn again. */
function addWeighings(db: Db, count: number): void {
  const { animals, weighings } = TEN_YEARS;
  db.prepare(
    `WITH RECURSIVE each (i) AS (SELECT CAST(@first AS INTEGER) UNION ALL SELECT i + 1 FROM each WHERE i + 1 < @of)
     INSERT INTO weighings (animal, at_ms, mass_g, uncertainty_g, method, hours_off_feed, by)
     SELECT i % ${animals} + 1, CAST(@endMs - (@of - i) * @apartMs AS INTEGER),
            30000.0 + i % ${animals} * 20 + i / ${animals} % 40 * 50, 60.0, 'scale', NULL, 'Wren' FROM each`,
  ).run({ first: weighings - count, of: weighings, endMs: givenAt(TEN_YEARS.treatments), apartMs: APART_MS });
}

const APART_MS = (givenAt(TEN_YEARS.treatments) - givenAt(0)) / TEN_YEARS.weighings;

function correct(path: string, first: number): void {
  const store = createStore(path);
  store.whole(() => {
    for (let i = first; i < TEN_YEARS.treatments; i += 1) {
      const correction = correctionOf(i);
      if (correction !== null) store.dayBook.addCorrection(correction);
    }
  });
  store.close();
}

/** Bytes of a database whose writes have all reached the file itself. */
function sizeOf(db: Db): number {
  return Number(db.pragma('page_count', { simple: true })) * Number(db.pragma('page_size', { simple: true }));
}

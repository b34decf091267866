import type { Treatment } from '../../../core/round/treatment.ts';
import { createBookLines } from '../../../server/store/book-lines.ts';
import { createBookRecords } from '../../../server/store/book-records.ts';
import { NEVER_BY_ITSELF } from '../../../server/store/book-schema.ts';
import { type Db, openStore } from '../../../server/store/open-store.ts';
import type { Untreated } from '../../../server/store/untreated.ts';

/** Lets a connection write without waiting for the disk: what a crash leaves behind is built again anyway. */
export function inBulk(db: Db): void {
  // Out of WAL there is no way but by DELETE.
  db.pragma('journal_mode = DELETE');
  db.pragma('journal_mode = OFF');
  db.pragma('synchronous = OFF');
  db.pragma('cache_size = -262144');
  db.pragma('foreign_keys = OFF');
}

/** Writes records of the bench with their lines, in the order of their dates, past the stores that check each of them. */
export function createBulk(db: Db) {
  const treatment = db.prepare(
    `INSERT INTO treatments (sequence, id, offer_id, animal_id, jug_id, medicine_id, given_at_ms, given_by, weight_g,
       volume_ml, strength_mg_per_ml, outcome, record) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  );
  const untreated = db.prepare(
    `INSERT INTO untreated (sequence, id, kind, animal_id, offer_id, reason, weight_g, at_ms, by, clock_trusted)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  );
  const line = db.prepare(
    `INSERT INTO book_lines (line, kind, sequence, filed_at_ms, at_ms, trusted, by, corrected, stood, dosed, medicine, jug,
       volume_ml, doubt_ml, draws, rests, weighed_at_ms, mass_g, uncertainty_g,
       meat_until_ms, meat_undated, milk_until_ms, milk_undated)
     VALUES (?, ?, ?, ?, ?, ?, ?, 0, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  );
  const animals = numbersOf(db, 'animals');
  const jugs = numbersOf(db, 'jugs');
  const count = { lines: 0, treatments: 0, untreated: 0 };
  const none = Array.from({ length: 13 }, () => null);
  return {
    /** Writes a treatment that was given whole, of a medicine ruled for its animal. */
    addTreatment(given: Treatment): void {
      const { id, givenAtMs, by, offer, outcome } = given;
      const { animal, jug, dose, weight } = offer;
      const { plan } = dose;
      const mass = weight.held.mass.value;
      const [sequence, number] = [++count.treatments, ++count.lines];
      const [goat, from] = [animals.get(animal.id), jugs.get(jug.id)];
      const trusted = given.clockTrusted ? 1 : 0;
      const places = [animal.id, jug.id, jug.medicineId, givenAtMs, by];
      const measured = [mass, plan.total.value, jug.strength.value, outcome];
      treatment.run(sequence, id, offer.id, ...places, ...measured, JSON.stringify(given));
      const what = [
        'treatment',
        sequence,
        givenAtMs,
        givenAtMs,
        trusted,
        by,
        goat,
        goat,
        jug.medicineId,
        from,
      ];
      const drawn = [plan.total.value, plan.relative * plan.total.value, plan.draws.length, 0];
      const weighed = [Math.round(weight.atMs), mass, weight.held.uncertainty.value];
      const undated = 1 - trusted;
      line.run(number, ...what, ...drawn, ...weighed, until(given.meat), undated, until(given.milk), undated);
    },
    /** Writes a visit without a dose under a trusted clock. */
    addUntreated({ id, kind, animalId, offerId, reason, weightGrams, atMs, by }: Untreated): void {
      const sequence = ++count.untreated;
      untreated.run(sequence, id, kind, animalId, offerId, reason, weightGrams, atMs, by, 1);
      const stood = animalId === null ? null : animals.get(animalId);
      line.run(++count.lines, kind, sequence, atMs, atMs, 1, by, stood, null, ...none);
    },
  };
}

/** Files a line anew as the kiosk does, and throws where that is not what stands there. Looks at every so-manyeth. */
export function checkLines(path: string, every: number): void {
  const db = openStore(path);
  inBulk(db);
  const [records, lines] = [createBookRecords(db), createBookLines(db)];
  const at = db.prepare(`SELECT * FROM book_lines WHERE kind = 'treatment' AND sequence = ?`);
  const last = db.prepare('SELECT max(sequence) FROM treatments').pluck().get() as number;
  for (let sequence = 1; sequence <= last; sequence += every) {
    const before = JSON.stringify(at.get(sequence));
    lines.changeTreatment(sequence, records.numbered(sequence));
    const after = JSON.stringify(at.get(sequence));
    if (before !== after) throw new Error(`the bench filed ${before}, the kiosk files ${after}`);
  }
  db.close();
}

function until(clear: Treatment['meat']): number {
  return clear.kind === 'at' ? clear.atMs : NEVER_BY_ITSELF[clear.kind];
}

function numbersOf(db: Db, table: 'animals' | 'jugs'): ReadonlyMap<string, number> {
  const rows = db.prepare<[], { id: string; number: number }>(`SELECT id, number FROM ${table}`).all();
  return new Map(rows.map(({ id, number }) => [id, number]));
}

import type { ClockCorrection } from '../../core/clock/correction.ts';
import { countIn } from '../../core/medicine/approval.ts';
import type { DayBookEntry } from '../../core/round/day-book.ts';
import type { Correction, Treatment } from '../../core/round/treatment.ts';
import { createBookHistory } from './book-history.ts';
import { createBookLines, type Received } from './book-lines.ts';
import { createBookPages } from './book-pages.ts';
import { createBookRecords, type NumberedEntry } from './book-records.ts';
import { createChain } from './chain.ts';
import { type ClockCorrections, createClockCorrections } from './clock-corrections.ts';
import { createDatedLines } from './dated-lines.ts';
import { fileRecords } from './file-records.ts';
import type { Db } from './open-store.ts';
import type { ToldBody } from './told-bodies.ts';
import { TreatmentRecord } from './treatment-record.ts';
import { createUntreatedReader, type Untreated } from './untreated.ts';

/** The day book on disk: its records are written to, never changed; read in parts, never as a whole. */
export function createDayBook(db: Db, clock: ClockCorrections = createClockCorrections(db)) {
  const records = createBookRecords(db, clock);
  const history = createBookHistory(db, records);
  const lines = createBookLines(db);
  const untreated = createUntreatedReader(db);
  const dated = createDatedLines(db, clock);
  fileRecords(db, records, untreated, lines);
  const chain = createChain(db);
  const addTreatment = db.prepare(
    `INSERT INTO treatments (id, offer_id, animal_id, jug_id, medicine_id, given_at_ms, given_by, weight_g, volume_ml,
                             strength_mg_per_ml, outcome, record)
     VALUES (@id, @offerId, @animalId, @jugId, @medicineId, @givenAt, @by, @weight, @volume, @strength, @outcome, @record)`,
  );
  const addCorrection = db.prepare(
    `INSERT INTO corrections (id, treatment_id, kind, animal_id, volume_ml, meat_hours, meat_days, milk_hours,
                              milk_days, at_ms, by)
     VALUES (@id, @treatmentId, @kind, @animalId, @volume, @meatHours, @meatDays, @milkHours, @milkDays, @at, @by)`,
  );
  const addUntreated = db.prepare(
    `INSERT INTO untreated (id, kind, animal_id, offer_id, reason, weight_g, at_ms, by, clock_trusted)
     VALUES (@id, @kind, @animalId, @offerId, @reason, @weightGrams, @atMs, @by, @trusted)`,
  );
  function writeCorrection(correction: Correction): number {
    const { what } = correction;
    const { meat, milk } = what.kind === 'vet-time' ? what : { meat: null, milk: null };
    const { lastInsertRowid } = addCorrection.run({
      id: correction.id,
      treatmentId: correction.treatmentId,
      kind: what.kind,
      animalId: what.kind === 'wrong-animal' ? what.animalId : null,
      volume: what.kind === 'wrong-volume' ? what.volumeMl : null,
      meatHours: countIn(meat, 'hours'),
      meatDays: countIn(meat, 'days'),
      milkHours: countIn(milk, 'hours'),
      milkDays: countIn(milk, 'days'),
      at: correction.atMs,
      by: correction.by,
    });
    chain.add('correction', Number(lastInsertRowid));
    return Number(lastInsertRowid);
  }

  function fileAnew(treatmentId: string): NumberedEntry {
    const entry = records.entry(treatmentId);
    if (entry === undefined) throw new Error(`there is no treatment ${treatmentId}`);
    lines.changeTreatment(entry.sequence, entry);
    return entry;
  }

  /** Files the treatments that a word on a start of the board dates anew under their dates; answers them. */
  function fileByClock(start: string, isMs: number, received: Received | null): NumberedEntry[] {
    return dated.by(start).map((sequence) => {
      const entry = records.numbered(sequence);
      lines.redate(sequence, entry, isMs, received);
      return entry;
    });
  }

  return {
    ...records,
    ...history,
    ...createBookPages(db, records, untreated),
    /** The newest entries, newest first, at most so many. */
    newest: (most: number) => records.below(Number.MAX_SAFE_INTEGER, most),
    /** The treatments that decide what is kept back of an animal, oldest first. */
    keepingBack: (animalId: string): DayBookEntry[] => history.keptBackBy(animalId).map(records.numbered),
    /** The newest treatments of an animal, newest first. */
    ofAnimal: (animalId: string, most: number) => history.newestOf(animalId, most).map(records.numbered),
    /** Writes a treatment, given here or received; throws when its offer has one already. Returns its number. */
    addTreatment(treatment: Treatment, received: Received | null = null): number {
      const { offer } = treatment;
      const { lastInsertRowid } = addTreatment.run({
        id: treatment.id,
        offerId: offer.id,
        animalId: offer.animal.id,
        jugId: offer.jug.id,
        medicineId: offer.jug.medicineId,
        givenAt: treatment.givenAtMs,
        by: treatment.by,
        weight: offer.weight.held.mass.value,
        volume: offer.dose.plan.total.value,
        strength: offer.jug.strength.value,
        outcome: treatment.outcome,
        record: JSON.stringify(TreatmentRecord.parse(treatment)),
      });
      const sequence = Number(lastInsertRowid);
      chain.add('treatment', sequence);
      lines.addTreatment(sequence, { treatment: records.asDated(treatment), corrections: [] }, received);
      return sequence;
    },
    /** Writes a correction beside its treatment, and returns the entry as it stands then. */
    addCorrection(correction: Correction): NumberedEntry {
      writeCorrection(correction);
      return fileAnew(correction.treatmentId);
    },
    /** Writes a correction that was received; `refile` belongs after its event, which says in what order it counts. */
    receiveCorrection: (correction: Correction) => ({
      sequence: writeCorrection(correction),
      refile: () => void fileAnew(correction.treatmentId),
    }),
    /** Finds what was written under records of an animal that were merged, or parted, where it belongs from now on. */
    refile(animalId: string): void {
      lines.refile(animalId, { treatment: records.numbered, untreated: untreated.numbered });
    },
    /** Writes a word on the clock, and files the treatments it may date anew under their dates; answers them. */
    correctClock(correction: ClockCorrection): NumberedEntry[] {
      chain.add('clock', clock.add(correction));
      return fileByClock(correction.board.start, correction.isMs, null);
    },
    /** Writes a word on the clock of another kiosk; `refile` belongs after its event, which says in what order it counts. */
    receiveClock(body: ToldBody<'clock-correction'>, received: Received) {
      const sequence = clock.receive(body);
      chain.add('clock', sequence);
      return {
        sequence,
        refile: () => fileByClock(body.board_start, body.is_ms, received),
      };
    },
    /** Whether a treatment or jug of a start of the board is dated otherwise than by that start at a wall time, ms since 1970. */
    isOwedCorrection: dated.isOwed,
    /** When the board started by the newest treatment, if that is of a named start and believed; else `null`. */
    startedAtMs: dated.startedAtMs,
    /** Writes a visit or an offer that ended without a dose, here or received. Returns its number. */
    addUntreated(ended: Untreated, received: Received | null = null): number {
      const { clockTrusted, ...row } = ended;
      const trusted = clockTrusted === null ? null : Number(clockTrusted);
      const { lastInsertRowid } = addUntreated.run({ ...row, trusted });
      const sequence = Number(lastInsertRowid);
      chain.add('untreated', sequence);
      lines.addUntreated(sequence, ended, received);
      return sequence;
    },
  };
}

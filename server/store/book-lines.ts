import type { Species } from '../../core/herd/animal.ts';
import { BELIEVED_AHEAD_MS } from '../../core/hub/clock.ts';
import { type Hold, holdsOfOne } from '../../core/round/clear-board.ts';
import { type DayBookEntry, earlierDoses, effectOf, stoodOnPlatform } from '../../core/round/day-book.ts';
import { NEVER_BY_ITSELF } from './book-schema.ts';
import { goingOn } from './merged.ts';
import type { Db } from './open-store.ts';
import type { Untreated } from './untreated.ts';

/** Reads the record a line stands for by its number. */
export interface ReadLine {
  readonly treatment: (sequence: number) => DayBookEntry;
  readonly untreated: (sequence: number) => Untreated;
}

/** That a record came from another kiosk, and the time here: milliseconds since 1970, `null` where nobody trusts it. */
export interface Received {
  readonly nowMs: number | null;
}

/** Keeps the lines that the day book is searched by in step with its records; belongs in the same transaction. */
export function createBookLines(db: Db) {
  const number = db.prepare<[string], { number: number; species: Species }>(
    `SELECT number, species FROM animals WHERE id = ${goingOn('?')}`,
  );
  const touching = db.prepare<[object], { line: number; kind: string; sequence: number }>(
    `SELECT line, kind, sequence FROM book_lines WHERE stood = (SELECT number FROM animals WHERE id = @id)
     UNION SELECT line, kind, sequence FROM book_lines WHERE dosed = (SELECT number FROM animals WHERE id = @id)`,
  );
  const stoodAgain = db.prepare('UPDATE book_lines SET stood = @stood WHERE line = @line');
  const jugNumber = db.prepare('SELECT number FROM jugs WHERE id = ?').pluck();
  const lastFiled = db.prepare('SELECT filed_at_ms FROM book_lines ORDER BY line DESC LIMIT 1').pluck();
  const insert = db.prepare(
    `INSERT INTO book_lines (kind, sequence, filed_at_ms, at_ms, trusted, by, corrected, stood, dosed, medicine, jug,
       volume_ml, doubt_ml, draws, rests, weighed_at_ms, mass_g, uncertainty_g,
       meat_until_ms, meat_undated, milk_until_ms, milk_undated,
       board_start, board_since_ms, received)
     VALUES (@kind, @sequence, @filedAt, @at, @trusted, @by, @corrected, @stood, @dosed, @medicine, @jug,
       @volume, @doubt, @draws, @rests, @weighedAt, @mass, @uncertainty, @meatUntil, @meatUndated, @milkUntil, @milkUndated,
       @boardStart, @boardSince, @received)`,
  );
  const change = db.prepare(
    `UPDATE book_lines SET corrected = @corrected, stood = @stood, dosed = @dosed, volume_ml = @volume, doubt_ml = @doubt,
       draws = @draws, rests = @rests, meat_until_ms = @meatUntil, meat_undated = @meatUndated, milk_until_ms = @milkUntil,
       milk_undated = @milkUndated
     WHERE kind = 'treatment' AND sequence = @sequence`,
  );

  const redate = db.prepare(
    `UPDATE book_lines SET filed_at_ms = @filedAt, at_ms = @at, trusted = @trusted
     WHERE kind = 'treatment' AND sequence = @sequence`,
  );

  function animal(id: string | null): { number: number; species: Species } | null {
    return id === null ? null : (number.get(id) ?? null);
  }

  /** A date nobody trusts files a line after the one before it; one that is still to come is another kiosk's wrong clock. */
  function filedBy(atMs: number, told: boolean, received: Received | null) {
    const ahead = isAhead(atMs, received);
    const trusted = told && !ahead;
    const from = ahead ? (received?.nowMs ?? atMs) : atMs;
    const filedAt = trusted ? atMs : Math.max(from, (lastFiled.get() as number | undefined) ?? from);
    return { filedAt, trusted: trusted ? 1 : 0, received: received === null ? null : 1 };
  }

  /** The columns that follow from a treatment and its corrections. */
  function standing(entry: DayBookEntry) {
    const { plan } = entry.treatment.offer.dose;
    const { animalId, volumeMl } = effectOf(entry);
    const dosed = animal(animalId);
    // Whatever zone the farm is in, the end it has there is within a day of the one in UTC.
    const { meat, milk } = holdsOfOne(entry, dosed?.species ?? null, 'UTC');
    return {
      corrected: entry.corrections.length > 0 ? 1 : 0,
      stood: animal(stoodOnPlatform(entry))?.number ?? null,
      dosed: dosed?.number ?? null,
      volume: volumeMl,
      doubt: plan.relative * volumeMl,
      draws: plan.draws.length,
      rests: earlierDoses([entry])[0]?.rest == null ? 0 : 1,
      meatUntil: until(meat),
      meatUndated: meat.provisional ? 1 : 0,
      milkUntil: until(milk),
      milkUndated: milk.provisional ? 1 : 0,
    };
  }

  return {
    /** Files a treatment under its sequence. */
    addTreatment(sequence: number, entry: DayBookEntry, received: Received | null = null): void {
      const { givenAtMs, clockTrusted, board, by, offer } = entry.treatment;
      const { held, atMs } = offer.weight;
      insert.run({
        kind: 'treatment',
        sequence,
        ...filedBy(givenAtMs, clockTrusted, received),
        at: givenAtMs,
        by,
        medicine: offer.jug.medicineId,
        jug: (jugNumber.get(offer.jug.id) as number | undefined) ?? null,
        // A group's dose went by a weight that is on record already.
        weighedAt: offer.group === null ? Math.round(atMs) : null,
        mass: held.mass.value,
        uncertainty: held.uncertainty.value,
        boardStart: board?.start ?? null,
        boardSince: board?.sinceMs ?? null,
        ...standing(entry),
      });
    },
    /** Files a treatment anew after a correction. */
    changeTreatment(sequence: number, entry: DayBookEntry): void {
      change.run({ sequence, ...standing(entry) });
    },
    /** Files a treatment under the date it has since the clock was told to be `isMs`; one without a date, there. */
    redate(sequence: number, entry: DayBookEntry, isMs: number, received: Received | null): void {
      const { givenAtMs: at, clockTrusted } = entry.treatment;
      const trusted = clockTrusted && !isAhead(at, received);
      redate.run({ sequence, at, filedAt: trusted ? at : Math.min(at, isMs), trusted: trusted ? 1 : 0 });
      change.run({ sequence, ...standing(entry) });
    },
    /** Files all lines of an animal anew: some are of records that were merged into it, or parted from it. */
    refile(id: string, read: ReadLine): void {
      for (const { line, kind, sequence } of touching.all({ id })) {
        if (kind === 'treatment') change.run({ sequence, ...standing(read.treatment(sequence)) });
        else stoodAgain.run({ line, stood: animal(read.untreated(sequence).animalId)?.number ?? null });
      }
    },
    /** Files a visit or an offer that ended without a dose. */
    addUntreated(
      sequence: number,
      { kind, animalId, atMs, by, clockTrusted }: Untreated,
      received: Received | null = null,
    ): void {
      insert.run({
        ...NO_DOSE,
        kind,
        sequence,
        ...filedBy(atMs, clockTrusted ?? false, received),
        at: atMs,
        by,
        stood: animal(animalId)?.number ?? null,
      });
    },
  };
}

const NO_DOSE = {
  corrected: 0,
  dosed: null,
  medicine: null,
  jug: null,
  volume: null,
  doubt: null,
  draws: null,
  rests: null,
  weighedAt: null,
  mass: null,
  uncertainty: null,
  meatUntil: null,
  meatUndated: null,
  milkUntil: null,
  milkUndated: null,
  boardStart: null,
  boardSince: null,
};

function isAhead(atMs: number, received: Received | null): boolean {
  return received?.nowMs != null && atMs > received.nowMs + BELIEVED_AHEAD_MS;
}

function until({ clear }: Hold): number {
  return clear.kind === 'at' ? clear.atMs : NEVER_BY_ITSELF[clear.kind];
}

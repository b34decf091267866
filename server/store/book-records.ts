import { z } from 'zod';
import { causalOrder } from '../../core/hub/causal-order.ts';
import { vetTime } from '../../core/medicine/approval.ts';
import type { DayBookEntry } from '../../core/round/day-book.ts';
import { redatedTreatment } from '../../core/round/redate.ts';
import type { Correction, Treatment } from '../../core/round/treatment.ts';
import { type ClockCorrections, createClockCorrections } from './clock-corrections.ts';
import { createGoesOn } from './merged.ts';
import type { Db } from './open-store.ts';
import { TreatmentRecord } from './treatment-record.ts';

/** A treatment with its corrections and its number on this kiosk, from 1. */
export interface NumberedEntry extends DayBookEntry {
  readonly sequence: number;
}

const Ids = z.array(z.string());
const CorrectionRow = z.strictObject({
  sequence: z.int(),
  id: z.string(),
  treatment_id: z.string(),
  kind: z.enum(['not-given', 'wrong-animal', 'wrong-volume', 'vet-time']),
  animal_id: z.string().nullable(),
  volume_ml: z.number().nullable(),
  meat_hours: z.int().nullable(),
  meat_days: z.int().nullable(),
  milk_hours: z.int().nullable(),
  milk_days: z.int().nullable(),
  at_ms: z.int(),
  by: z.string(),
});

/** A row of `treatments` as far as it is read: the record holds everything else. */
export interface TreatmentRow {
  readonly sequence: number;
  readonly record: string;
}

/**
 * Reads the records of treatments with their corrections. Each names the animal by the record that goes on today, and is
 * dated by what was told of the clock since.
 */
export function createBookRecords(db: Db, clock: ClockCorrections = createClockCorrections(db)) {
  const byId = db.prepare<[string], TreatmentRow>('SELECT sequence, record FROM treatments WHERE id = ?');
  const bySequence = db.prepare<[number], TreatmentRow>(
    'SELECT sequence, record FROM treatments WHERE sequence = ?',
  );
  const below = db.prepare<[number, number], TreatmentRow>(
    'SELECT sequence, record FROM treatments WHERE sequence < ? ORDER BY sequence DESC LIMIT ?',
  );
  const corrections = db.prepare<[string], z.infer<typeof CorrectionRow>>(
    'SELECT * FROM corrections WHERE treatment_id = ? ORDER BY sequence',
  );
  const word = db.prepare<[number], { clock: string; after: string | null }>(
    "SELECT clock, body ->> '$.after' AS after FROM events WHERE kind = 'correction' AND record = ?",
  );

  const goesOn = createGoesOn(db);

  function asDated(treatment: Treatment): Treatment {
    return redatedTreatment(treatment, clock.toldOf(treatment.id, treatment.board?.start ?? null));
  }

  function toEntry({ sequence, record }: TreatmentRow): NumberedEntry {
    const treatment = asDated(TreatmentRecord.parse(JSON.parse(record)));
    const { offer } = treatment;
    return {
      sequence,
      treatment: {
        ...treatment,
        offer: { ...offer, animal: { ...offer.animal, id: goesOn(offer.animal.id) } },
      },
      corrections: inOrder(corrections.all(treatment.id)).map(toCorrection).map(named),
    };
  }

  /** The latest statement counts: on every kiosk the same one, whatever order they came in. */
  function inOrder(rows: readonly z.infer<typeof CorrectionRow>[]): readonly unknown[] {
    if (rows.length < 2) return rows;
    const said = rows.map((row) => {
      const { clock = '', after = null } = word.get(row.sequence) ?? {};
      return { id: row.id, clock, after: after === null ? [] : Ids.parse(JSON.parse(after)), row };
    });
    return causalOrder(said).map(({ row }) => row);
  }

  /** A correction that named another animal, by the record that one goes on as. */
  function named(correction: Correction): Correction {
    const { what } = correction;
    if (what.kind !== 'wrong-animal') return correction;
    return { ...correction, what: { ...what, animalId: goesOn(what.animalId) } };
  }

  return {
    /** A treatment by what was told of the clock. */
    asDated,
    /** The entry of a treatment; `undefined` where there is none of this id. */
    entry(id: string): NumberedEntry | undefined {
      const row = byId.get(id);
      return row === undefined ? undefined : toEntry(row);
    },
    /** The entry of a number that is known to be given. */
    numbered(sequence: number): NumberedEntry {
      const row = bySequence.get(sequence);
      if (row === undefined) throw new Error(`the day book has no number ${sequence}`);
      return toEntry(row);
    },
    /** The newest entries below a number, newest first, at most so many. */
    below(sequence: number, most: number): NumberedEntry[] {
      return below.all(sequence, most).map(toEntry);
    },
  };
}

function toCorrection(raw: unknown): Correction {
  return correctionFrom(CorrectionRow.parse(raw));
}

/** A correction from the columns it stands in. */
export function correctionFrom(row: Omit<z.infer<typeof CorrectionRow>, 'sequence'>): Correction {
  return { id: row.id, treatmentId: row.treatment_id, what: whatOf(row), atMs: row.at_ms, by: row.by };
}

function whatOf(row: Omit<z.infer<typeof CorrectionRow>, 'sequence'>): Correction['what'] {
  if (row.kind === 'wrong-animal' && row.animal_id !== null)
    return { kind: row.kind, animalId: row.animal_id };
  if (row.kind === 'wrong-volume' && row.volume_ml !== null)
    return { kind: row.kind, volumeMl: row.volume_ml };
  if (row.kind === 'vet-time') {
    const { kind, meat_hours, meat_days, milk_hours, milk_days } = row;
    return { kind, meat: vetTime(meat_hours, meat_days), milk: vetTime(milk_hours, milk_days) };
  }
  return { kind: 'not-given' };
}

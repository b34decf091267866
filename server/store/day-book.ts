import { z } from 'zod';
import { countIn, vetTime } from '../../core/medicine/approval.ts';
import { type DayBookEntry, pairUp } from '../../core/round/day-book.ts';
import type { Correction, Treatment } from '../../core/round/treatment.ts';
import type { Db } from './open-store.ts';
import { TreatmentRecord } from './treatment-record.ts';

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

/** A visit that ended without a dose, or an offer that did. */
export interface Untreated {
  readonly id: string;
  readonly kind: 'skipped' | 'lapsed' | 'not-given';
  readonly animalId: string | null;
  readonly offerId: string | null;
  readonly reason: string | null;
  readonly weightGrams: number | null;
  readonly atMs: number;
  readonly by: string;
}

/** The day book on disk: written to, never changed. */
export function createDayBook(db: Db) {
  const treatments = db.prepare('SELECT record FROM treatments ORDER BY sequence').pluck();
  const corrections = db.prepare('SELECT * FROM corrections ORDER BY sequence');
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
    `INSERT INTO untreated (id, kind, animal_id, offer_id, reason, weight_g, at_ms, by)
     VALUES (@id, @kind, @animalId, @offerId, @reason, @weightGrams, @atMs, @by)`,
  );
  return {
    /** Every treatment with its corrections, oldest first: the n-th is number n on this kiosk. */
    entries(): DayBookEntry[] {
      const rows = treatments.all().map((record) => TreatmentRecord.parse(JSON.parse(String(record))));
      return pairUp(rows, corrections.all().map(toCorrection));
    },
    /** Writes a treatment; throws when its offer has one already. */
    addTreatment(treatment: Treatment): void {
      const { offer } = treatment;
      addTreatment.run({
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
    },
    /** Writes a correction beside its treatment. */
    addCorrection(correction: Correction): void {
      const { what } = correction;
      const { meat, milk } = what.kind === 'vet-time' ? what : { meat: null, milk: null };
      addCorrection.run({
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
    },
    /** Writes a visit or an offer that ended without a dose. */
    addUntreated(untreated: Untreated): void {
      addUntreated.run({ ...untreated });
    },
  };
}

function toCorrection(raw: unknown): Correction {
  const row = CorrectionRow.parse(raw);
  return { id: row.id, treatmentId: row.treatment_id, what: whatOf(row), atMs: row.at_ms, by: row.by };
}

function whatOf(row: z.infer<typeof CorrectionRow>): Correction['what'] {
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

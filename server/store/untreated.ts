import { z } from 'zod';
import { createGoesOn } from './merged.ts';
import type { Db } from './open-store.ts';

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
  /** `null` in rows from before this was kept. */
  readonly clockTrusted: boolean | null;
}

const Row = z.strictObject({
  sequence: z.int(),
  id: z.string(),
  kind: z.enum(['skipped', 'lapsed', 'not-given']),
  animal_id: z.string().nullable(),
  offer_id: z.string().nullable(),
  reason: z.string().nullable(),
  weight_g: z.number().nullable(),
  at_ms: z.int(),
  by: z.string(),
  clock_trusted: z.int().nullable(),
});

/** Reads what ended without a dose, each with its number and the animal by the record that goes on today. */
export function createUntreatedReader(db: Db) {
  const above = db.prepare('SELECT * FROM untreated WHERE sequence > ? ORDER BY sequence LIMIT ?');
  const goesOn = createGoesOn(db);
  function read(raw: unknown): Untreated & { readonly sequence: number } {
    const ended = toUntreated(raw);
    return ended.animalId === null ? ended : { ...ended, animalId: goesOn(ended.animalId) };
  }
  return {
    /** Those after a number, oldest first, at most so many. */
    above(sequence: number, most: number): (Untreated & { readonly sequence: number })[] {
      return above.all(sequence, most).map(read);
    },
    /** The one of a number that is known to be given. */
    numbered(sequence: number): Untreated & { readonly sequence: number } {
      return read(above.get(sequence - 1, 1));
    },
  };
}

function toUntreated(raw: unknown): Untreated & { readonly sequence: number } {
  const row = Row.parse(raw);
  return {
    sequence: row.sequence,
    id: row.id,
    kind: row.kind,
    animalId: row.animal_id,
    offerId: row.offer_id,
    reason: row.reason,
    weightGrams: row.weight_g,
    atMs: row.at_ms,
    by: row.by,
    clockTrusted: row.clock_trusted === null ? null : row.clock_trusted === 1,
  };
}

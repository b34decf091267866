import { z } from 'zod';
import type { Vessel } from '../../core/mixing/vessel.ts';
import { grams } from '../../core/quantity/mass.ts';
import type { Db } from './open-store.ts';

const Row = z.object({
  id: z.string(),
  letter: z.string(),
  empty_g: z.number(),
  uncertainty_g: z.number(),
  learned_at_ms: z.int(),
  learned_by: z.string(),
  retired_at_ms: z.int().nullable(),
});

/** The farm's empty jugs on disk. One that is weighed anew is retired, and its letter goes to the new entry. */
export function createVesselStore(db: Db) {
  const all = db.prepare('SELECT * FROM vessels ORDER BY sequence');
  const insert = db.prepare(
    `INSERT INTO vessels (id, letter, empty_g, uncertainty_g, learned_at_ms, learned_by)
     VALUES (@id, @letter, @empty, @uncertainty, @at, @by)`,
  );
  const retire = db.prepare(
    'UPDATE vessels SET retired_at_ms = ? WHERE letter = ? AND retired_at_ms IS NULL',
  );
  return {
    /** Every jug that was ever learned, oldest first. */
    all(): Vessel[] {
      return all.all().map((row) => {
        const vessel = Row.parse(row);
        return {
          id: vessel.id,
          letter: vessel.letter,
          empty: grams(vessel.empty_g),
          uncertainty: grams(vessel.uncertainty_g),
          learnedAtMs: vessel.learned_at_ms,
          by: vessel.learned_by,
          retiredAtMs: vessel.retired_at_ms,
        };
      });
    },
    /** Keeps what an empty jug weighs; whatever wore its letter before is retired. */
    learn({ id, letter, empty, uncertainty, learnedAtMs, by }: Vessel): void {
      retire.run(learnedAtMs, letter);
      insert.run({
        id,
        letter,
        empty: empty.value,
        uncertainty: uncertainty.value,
        at: learnedAtMs,
        by,
      });
    },
  };
}

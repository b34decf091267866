import { z } from 'zod';
import type { Weighing } from '../../core/growth/weighing.ts';
import { grams } from '../../core/quantity/mass.ts';
import { recordsOf } from './merged.ts';
import type { Db } from './open-store.ts';

const Row = z.strictObject({
  at_ms: z.int(),
  mass_g: z.number(),
  uncertainty_g: z.number().nullable(),
  method: z.enum(['scale', 'girth', 'guess', 'imported']),
  hours_off_feed: z.number().nullable(),
});
const By = z.looseObject({ by: z.string() });
const PARTS = 'at_ms, mass_g, uncertainty_g, method, hours_off_feed';

/** Weights of animals on disk, never edited and never deleted. Those a dose went by stand in the day book instead. */
export function createWeighingStore(db: Db) {
  const insert = db.prepare(
    `INSERT INTO weighings (animal, at_ms, mass_g, uncertainty_g, method, hours_off_feed, by)
     VALUES ((SELECT number FROM animals WHERE id = @animalId), @atMs, @mass, @uncertainty, @method, @hours, @by)
     ON CONFLICT DO NOTHING`,
  );
  const newest = db.prepare(
    `SELECT ${PARTS} FROM weighings WHERE animal IN ${recordsOf('?')}
     ORDER BY at_ms DESC, mass_g DESC LIMIT ?`,
  );
  const after = db.prepare(
    `SELECT ${PARTS}, by FROM weighings WHERE animal IN ${recordsOf('@animalId')}
       AND (at_ms, mass_g) > (@atMs, @grams) AND at_ms >= @fromMs AND at_ms < @toMs
     ORDER BY at_ms, mass_g LIMIT @most`,
  );
  return {
    /** Weights of an animal after one of them (`null`: from the first on), oldest first, each with who weighed. */
    after(
      asked: { readonly animalId: string; readonly fromMs: number; readonly toMs: number },
      last: Weighing | null,
      most: number,
    ): (Weighing & { readonly by: string })[] {
      const place = { atMs: last?.atMs ?? asked.fromMs - 1, grams: last?.mass.value ?? 0 };
      return after.all({ ...asked, ...place, most }).map((raw) => {
        const { by, ...row } = By.parse(raw);
        return { ...toWeighing(row), by };
      });
    },
    /** Writes a weight; the same weight of the same time is the same weighing and is not written twice. */
    add(animalId: string, weighing: Omit<Weighing, 'id'>, by: string): void {
      insert.run({
        animalId,
        atMs: Math.round(weighing.atMs),
        mass: weighing.mass.value,
        uncertainty: weighing.uncertainty?.value ?? null,
        method: weighing.method,
        hours: weighing.hoursOffFeed,
        by,
      });
    },
    /** The newest weights of an animal, newest first, at most so many. */
    newest(animalId: string, most: number): Weighing[] {
      return newest.all(animalId, most).map(toWeighing);
    },
  };
}

function toWeighing(raw: unknown): Weighing {
  const row = Row.parse(raw);
  return {
    id: `${row.at_ms}:${row.mass_g}`,
    mass: grams(row.mass_g),
    uncertainty: row.uncertainty_g === null ? null : grams(row.uncertainty_g),
    atMs: row.at_ms,
    method: row.method,
    hoursOffFeed: row.hours_off_feed,
  };
}

import { z } from 'zod';
import type { SampleMethod } from '../../core/worms/counting-methods.ts';
import {
  type EggCorrection,
  type EggEntry,
  type EggRecord,
  pairCounts,
} from '../../core/worms/egg-record.ts';
import { goingOn } from './merged.ts';
import type { Db } from './open-store.ts';

const Row = z.strictObject({
  number: z.int(),
  id: z.string(),
  eggs: z.int(),
  dung_g: z.number().nullable(),
  suspension_ml: z.number().nullable(),
  counted_ml: z.number().nullable(),
  told_factor: z.number().nullable(),
  purpose: z.enum(['herd', 'ill', 'bought-in', 'test']),
  test_id: z.string().nullable(),
  stage: z.enum(['before', 'after']).nullable(),
  taken_at_ms: z.int(),
  logged_at_ms: z.int(),
  by: z.string(),
});
const CorrectionRow = z.strictObject({
  id: z.string(),
  count_id: z.string(),
  kind: z.enum(['taken-back', 'other-number']),
  eggs: z.int().nullable(),
  at_ms: z.int(),
  by: z.string(),
});
const Whose = z.strictObject({ count: z.int(), animal_id: z.string() });

/** Egg counts on disk, never edited and never deleted; corrections stand beside them. */
export function createEggCountStore(db: Db) {
  const counts = db.prepare(
    `SELECT egg_counts.number, egg_counts.id, eggs, dung_g, suspension_ml, counted_ml, told_factor, purpose,
            reduction_tests.id AS test_id, stage, taken_at_ms, logged_at_ms, egg_counts.by
     FROM egg_counts LEFT JOIN reduction_tests ON reduction_tests.number = egg_counts.test
     ORDER BY egg_counts.number`,
  );
  const whose = db.prepare(
    `SELECT DISTINCT count, ${goingOn('animals.id')} AS animal_id FROM egg_count_animals JOIN animals ON animals.number = animal
     ORDER BY count, animals.name`,
  );
  const corrections = db.prepare(
    'SELECT id, count_id, kind, eggs, at_ms, by FROM egg_count_corrections ORDER BY sequence',
  );
  const insert = db.prepare(
    `INSERT INTO egg_counts (id, eggs, dung_g, suspension_ml, counted_ml, told_factor, purpose, test, stage,
                             taken_at_ms, logged_at_ms, by)
     VALUES (@id, @eggs, @dung, @suspension, @counted, @told, @purpose,
             (SELECT number FROM reduction_tests WHERE id = @test), @stage, @takenAtMs, @loggedAtMs, @by)`,
  );
  const insertAnimal = db.prepare(
    `INSERT INTO egg_count_animals (count, animal)
     VALUES ((SELECT number FROM egg_counts WHERE id = ?), (SELECT number FROM animals WHERE id = ?))`,
  );
  const insertCorrection = db.prepare(
    `INSERT INTO egg_count_corrections (id, count_id, kind, eggs, at_ms, by)
     VALUES (@id, @countId, @kind, @eggs, @atMs, @by)`,
  );
  return {
    /** Every count with its corrections, in the order they were logged. */
    entries(): EggEntry[] {
      const animals = new Map<number, string[]>();
      for (const raw of whose.all()) {
        const { count, animal_id } = Whose.parse(raw);
        animals.set(count, [...(animals.get(count) ?? []), animal_id]);
      }
      const records = counts.all().map((raw) => {
        const row = Row.parse(raw);
        return toRecord(row, animals.get(row.number) ?? []);
      });
      return pairCounts(records, corrections.all().map(toCorrection));
    },
    /** Writes a count; throws where an animal or the test is unknown. */
    add({ method, test, animalIds, ...record }: EggRecord): void {
      const slide = method.kind === 'slide' ? method : null;
      insert.run({
        ...record,
        dung: slide?.dungGrams ?? null,
        suspension: slide?.suspensionMl ?? null,
        counted: slide?.countedMl ?? null,
        told: method.kind === 'told' ? method.factor : null,
        test: test?.id ?? null,
        stage: test?.stage ?? null,
      });
      for (const animalId of animalIds) insertAnimal.run(record.id, animalId);
    },
    /** Writes a correction beside its count. */
    correct({ id, countId, what, atMs, by }: EggCorrection): void {
      const eggs = what.kind === 'other-number' ? what.eggs : null;
      insertCorrection.run({ id, countId, kind: what.kind, eggs, atMs, by });
    },
  };
}

function toRecord(row: z.infer<typeof Row>, animalIds: readonly string[]): EggRecord {
  return {
    id: row.id,
    animalIds,
    eggs: row.eggs,
    method: methodOf(row),
    purpose: row.purpose,
    test: row.test_id === null || row.stage === null ? null : { id: row.test_id, stage: row.stage },
    takenAtMs: row.taken_at_ms,
    loggedAtMs: row.logged_at_ms,
    by: row.by,
  };
}

function methodOf({ dung_g, suspension_ml, counted_ml, told_factor }: z.infer<typeof Row>): SampleMethod {
  if (told_factor !== null) return { kind: 'told', factor: told_factor };
  if (dung_g === null || suspension_ml === null || counted_ml === null)
    throw new Error('an egg count has no method');
  return { kind: 'slide', dungGrams: dung_g, suspensionMl: suspension_ml, countedMl: counted_ml };
}

function toCorrection(raw: unknown): EggCorrection {
  const { id, count_id, kind, eggs, at_ms, by } = CorrectionRow.parse(raw);
  const what = kind === 'other-number' && eggs !== null ? { kind, eggs } : ({ kind: 'taken-back' } as const);
  return { id, countId: count_id, what, atMs: at_ms, by };
}

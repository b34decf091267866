import { z } from 'zod';
import type { ReductionTest, TestAnimal } from '../../core/reduction/reduction-test.ts';
import { Species } from '../../shared/animal.ts';
import { SampleMethodView } from '../../shared/egg-count.ts';
import { goingOn } from './merged.ts';
import type { Db } from './open-store.ts';

const Row = z.strictObject({
  number: z.int(),
  id: z.string(),
  medicine_id: z.string(),
  species: Species,
  design: z.enum(['paired', 'unpaired']),
  protocol: z.enum(['clinical', 'research']),
  method: z.string(),
  planned_at_ms: z.int(),
  by: z.string(),
  how: z.enum(['judged', 'given-up']).nullable(),
  ended_at_ms: z.int().nullable(),
  ended_by: z.string().nullable(),
});
const AnimalRow = z.strictObject({
  test: z.int(),
  animal_id: z.string(),
  treatment_id: z.string().nullable(),
});

/** Reduction tests on disk, never edited and never deleted: their end stands beside them. */
export function createReductionTestStore(db: Db) {
  const tests = db.prepare(
    `SELECT number, id, medicine_id, species, design, protocol, method, planned_at_ms, reduction_tests.by,
            how, at_ms AS ended_at_ms, reduction_test_ends.by AS ended_by
     FROM reduction_tests LEFT JOIN reduction_test_ends ON test = number ORDER BY number`,
  );
  const animals = db.prepare(
    `SELECT test, ${goingOn('animals.id')} AS animal_id, treatment_id
     FROM reduction_test_animals JOIN animals ON animals.number = animal ORDER BY test, animals.name`,
  );
  const insert = db.prepare(
    `INSERT INTO reduction_tests (id, medicine_id, species, design, protocol, method, planned_at_ms, by)
     VALUES (@id, @medicineId, @species, @design, @protocol, @method, @plannedAtMs, @by)`,
  );
  const insertAnimal = db.prepare(
    `INSERT INTO reduction_test_animals (test, animal, treatment_id)
     VALUES ((SELECT number FROM reduction_tests WHERE id = ?), (SELECT number FROM animals WHERE id = ?), ?)`,
  );
  const insertEnd = db.prepare(
    `INSERT INTO reduction_test_ends (test, how, at_ms, by)
     VALUES ((SELECT number FROM reduction_tests WHERE id = @id), @how, @atMs, @by)`,
  );
  return {
    /** Every test in the order they were planned. */
    all(): ReductionTest[] {
      const of = new Map<number, TestAnimal[]>();
      for (const raw of animals.all()) {
        const { test, animal_id, treatment_id } = AnimalRow.parse(raw);
        of.set(test, [...(of.get(test) ?? []), { animalId: animal_id, treatmentId: treatment_id }]);
      }
      return tests.all().map((raw) => {
        const row = Row.parse(raw);
        return toTest(row, of.get(row.number) ?? []);
      });
    },
    /** Writes a planned test; throws where an animal or a treatment is unknown. */
    add({ animals: members, end: _, method, ...test }: ReductionTest): void {
      insert.run({ ...test, method: JSON.stringify(SampleMethodView.parse(method)) });
      for (const { animalId, treatmentId } of members) insertAnimal.run(test.id, animalId, treatmentId);
    },
    /** Writes the end of a test; throws where it has one. */
    end(id: string, { how, atMs, by }: NonNullable<ReductionTest['end']>): void {
      insertEnd.run({ id, how, atMs, by });
    },
  };
}

function toTest(row: z.infer<typeof Row>, animals: readonly TestAnimal[]): ReductionTest {
  const { how, ended_at_ms, ended_by } = row;
  return {
    id: row.id,
    medicineId: row.medicine_id,
    species: row.species,
    design: row.design,
    protocol: row.protocol,
    method: SampleMethodView.parse(JSON.parse(row.method)),
    animals,
    plannedAtMs: row.planned_at_ms,
    by: row.by,
    end: how === null || ended_at_ms === null ? null : { how, atMs: ended_at_ms, by: ended_by ?? '' },
  };
}

import { z } from 'zod';
import type { Animal } from '../../core/herd/animal.ts';
import { grams } from '../../core/quantity/mass.ts';
import { AnimalClass, Species } from '../../shared/animal.ts';
import type { Db } from './open-store.ts';

const Row = z.strictObject({
  id: z.string(),
  name: z.string(),
  species: Species,
  class: AnimalClass,
  tag: z.string().nullable(),
  in_milk: z.int(),
  bred_at_ms: z.int().nullable(),
  first_weight_g: z.number().nullable(),
  first_weighed_at_ms: z.int().nullable(),
  born_at_ms: z.int().nullable(),
  males_removed_at_ms: z.int().nullable(),
});

/** The herd on disk. Weights after the first come from the day book. */
export function createAnimalStore(db: Db) {
  const all = db.prepare('SELECT * FROM animals ORDER BY name');
  const insert = db.prepare(
    `INSERT INTO animals (id, name, species, class, tag, in_milk, born_at_ms, bred_at_ms, males_removed_at_ms,
                          first_weight_g, first_weighed_at_ms)
     VALUES (@id, @name, @species, @class, @tag, @inMilk, @bornAtMs, @bredAtMs, @malesRemovedAtMs, @firstWeight,
             @firstWeighedAt)`,
  );
  return {
    /** Every animal with the weight it was enrolled at, if any. */
    all(): Animal[] {
      return all.all().map((row) => {
        const animal = Row.parse(row);
        return {
          id: animal.id,
          name: animal.name,
          species: animal.species,
          class: animal.class,
          tag: animal.tag,
          inMilk: animal.in_milk === 1,
          bornAtMs: animal.born_at_ms,
          bredAtMs: animal.bred_at_ms,
          malesRemovedAtMs: animal.males_removed_at_ms,
          lastWeight:
            animal.first_weight_g === null || animal.first_weighed_at_ms === null
              ? null
              : { mass: grams(animal.first_weight_g), atMs: animal.first_weighed_at_ms },
        };
      });
    },
    /** Adds one animal; throws when its name or tag is taken. */
    add(animal: Animal): void {
      insert.run({
        id: animal.id,
        name: animal.name,
        species: animal.species,
        class: animal.class,
        tag: animal.tag,
        inMilk: animal.inMilk ? 1 : 0,
        bornAtMs: animal.bornAtMs,
        bredAtMs: animal.bredAtMs,
        malesRemovedAtMs: animal.malesRemovedAtMs,
        firstWeight: animal.lastWeight?.mass.value ?? null,
        firstWeighedAt: animal.lastWeight?.atMs ?? null,
      });
    },
  };
}

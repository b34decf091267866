import { z } from 'zod';
import type { HerdAnimal, Life } from '../../core/herd/herd-animal.ts';
import type { AtMerge } from '../../core/herd/part.ts';
import { AnimalClass, Species } from '../../shared/animal.ts';
import type { Db } from './open-store.ts';
import type { createWeighingStore } from './weighings.ts';

const Row = z.strictObject({
  number: z.int(),
  id: z.string(),
  name: z.string(),
  species: Species,
  class: AnimalClass,
  tag: z.string().nullable(),
  visual_tags: z.string(),
  former_tags: z.string(),
  in_milk: z.int(),
  in_milk_since_ms: z.int().nullable(),
  born_at_ms: z.int().nullable(),
  bred_at_ms: z.int().nullable(),
  kidded_at_ms: z.int().nullable(),
  males_removed_at_ms: z.int().nullable(),
  pen: z.string().nullable(),
  mark: z.string().nullable(),
  photo: z.string().nullable(),
  life: z.enum(['present', 'sold', 'died', 'merged']),
  left_at_ms: z.int().nullable(),
  left_by: z.string().nullable(),
  merged_into_id: z.string().nullable(),
});
const VisualTags = z.array(z.string());
const FormerTags = z.array(
  z.strictObject({ number: z.string(), untilMs: z.number(), why: z.enum(['lost', 'merged']) }),
);

function jsonOf(form: z.ZodType) {
  return z.string().refine((text) => form.safeParse(jsonIn(text)).success);
}

function jsonIn(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** The columns of an animal that change over its life, and are told to other kiosks. */
export const CHANGING_COLUMNS = [
  'name',
  'species',
  'class',
  'tag',
  'visual_tags',
  'former_tags',
  'in_milk',
  'in_milk_since_ms',
  'born_at_ms',
  'bred_at_ms',
  'kidded_at_ms',
  'males_removed_at_ms',
  'pen',
  'mark',
  'photo',
  'life',
  'left_at_ms',
  'left_by',
  'merged_into_id',
] as const satisfies readonly (keyof z.infer<typeof Row>)[];
type Columns = Pick<z.infer<typeof Row>, (typeof CHANGING_COLUMNS)[number]>;

/** Those columns as they are told: what they hold is read again wherever the animal is. */
export const AnimalColumns = Row.omit({ number: true, id: true }).extend({
  visual_tags: jsonOf(VisualTags),
  former_tags: jsonOf(FormerTags),
});

/** The herd on disk: those that left too. What an animal was before each change is kept beside it. */
export function createAnimalStore(db: Db, weighings: ReturnType<typeof createWeighingStore>) {
  const all = db.prepare('SELECT * FROM animals ORDER BY name');
  const byId = db.prepare('SELECT * FROM animals WHERE id = ?');
  const insert = db.prepare(
    `INSERT INTO animals (id, ${CHANGING_COLUMNS.join(', ')}) VALUES (@id, ${CHANGING_COLUMNS.map((name) => `@${name}`).join(', ')})`,
  );
  const update = db.prepare(
    `UPDATE animals SET ${CHANGING_COLUMNS.map((name) => `${name} = @${name}`).join(', ')} WHERE id = @id`,
  );
  const remember = db.prepare(
    `INSERT INTO animal_changes (animal, at_ms, by, before, after)
     VALUES ((SELECT number FROM animals WHERE id = @id), @atMs, @by, @before, @after)`,
  );
  const insertMerge = db.prepare(
    `INSERT INTO animal_merges (kind, kept, gone, at_ms, by, before, after)
     VALUES (@kind, (SELECT number FROM animals WHERE id = @kept), (SELECT number FROM animals WHERE id = @gone),
             @atMs, @by, @before, @after)`,
  );
  const lastMerge = db.prepare<[string], { before: string; after: string }>(
    `SELECT before, after FROM animal_merges
     WHERE kind = 'merged' AND gone = (SELECT number FROM animals WHERE id = ?) ORDER BY sequence DESC LIMIT 1`,
  );

  function change(before: HerdAnimal, after: HerdAnimal, atMs: number, by: string): void {
    const changed = changedColumns(before, after);
    if (changed === null) return;
    update.run({ id: after.id, ...toColumns(after) });
    remember.run({ id: after.id, atMs, by, ...changed });
  }

  return {
    /** Every animal there is or was, by name; their weights stand elsewhere. */
    all(): HerdAnimal[] {
      return all.all().map((row) => toAnimal(Row.parse(row)));
    },
    /** The animal of an id, whatever became of it; its weights stand elsewhere. */
    find(id: string): HerdAnimal | undefined {
      const row = byId.get(id);
      return row === undefined ? undefined : toAnimal(Row.parse(row));
    },
    /** Adds one animal and the weight it comes with, if any; throws when its name or tag is another's on the farm. */
    add(animal: HerdAnimal, by: string): void {
      insert.run({ id: animal.id, ...toColumns(animal) });
      if (animal.lastWeight === null) return;
      const came = { uncertainty: null, method: 'imported', hoursOffFeed: null } as const;
      weighings.add(animal.id, { ...animal.lastWeight, ...came }, by);
    },
    /** Keeps an animal as it is now, and what it was before; throws when its name or tag is another's on the farm. */
    change,
    /** Keeps two records as one animal from now on, or as two again, with what that changed of the one that goes on. */
    keepMerge(
      kind: 'merged' | 'parted',
      before: BothRecords,
      after: BothRecords,
      atMs: number,
      by: string,
    ): void {
      // Whichever lets go of a name or a tag comes first: no two animals on the farm carry one at any time.
      const order = kind === 'merged' ? (['gone', 'kept'] as const) : (['kept', 'gone'] as const);
      for (const side of order) change(before[side], after[side], atMs, by);
      const changed = changedColumns(before.kept, after.kept) ?? { before: '{}', after: '{}' };
      insertMerge.run({ kind, kept: after.kept.id, gone: after.gone.id, atMs, by, ...changed });
    },
    /** What the last merge of a record made of the one it went up in: that one as it was, and as it was left. */
    mergeOf(goneId: string, kept: HerdAnimal): AtMerge | null {
      const row = lastMerge.get(goneId);
      if (row === undefined) return null;
      const as = (changed: string) =>
        toAnimal(Row.parse({ number: 0, id: kept.id, ...toColumns(kept), ...JSON.parse(changed) }));
      return { before: as(row.before), after: as(row.after) };
    },
  };
}

/** Two records of one animal: the one that goes on, and the one that goes up in it. */
export interface BothRecords {
  readonly kept: HerdAnimal;
  readonly gone: HerdAnimal;
}

/** The columns that differ between two states of an animal, as each state has them; `null` where none does. */
function changedColumns(before: HerdAnimal, after: HerdAnimal): { before: string; after: string } | null {
  const [was, is] = [toColumns(before), toColumns(after)];
  const changed = CHANGING_COLUMNS.filter((name) => was[name] !== is[name]);
  if (changed.length === 0) return null;
  const pick = (from: Columns) => JSON.stringify(Object.fromEntries(changed.map((key) => [key, from[key]])));
  return { before: pick(was), after: pick(is) };
}

function toAnimal(row: z.infer<typeof Row>): HerdAnimal {
  return {
    id: row.id,
    name: row.name,
    species: row.species,
    class: row.class,
    tag: row.tag,
    visualTags: VisualTags.parse(JSON.parse(row.visual_tags)),
    formerTags: FormerTags.parse(JSON.parse(row.former_tags)),
    inMilk: row.in_milk === 1,
    inMilkSinceMs: row.in_milk_since_ms,
    bornAtMs: row.born_at_ms,
    bredAtMs: row.bred_at_ms,
    kiddedAtMs: row.kidded_at_ms,
    malesRemovedAtMs: row.males_removed_at_ms,
    pen: row.pen,
    mark: row.mark,
    photo: row.photo,
    lastWeight: null,
    life: lifeOf(row),
  };
}

function lifeOf({ life, left_at_ms, left_by, merged_into_id }: z.infer<typeof Row>): Life {
  if (life === 'present' || left_at_ms === null) return { kind: 'present' };
  const left = { atMs: left_at_ms, by: left_by ?? '' };
  if (life !== 'merged') return { kind: life, ...left };
  return { kind: 'merged', intoId: merged_into_id ?? '', ...left };
}

function toColumns(animal: HerdAnimal): Columns {
  const { life } = animal;
  return {
    name: animal.name,
    species: animal.species,
    class: animal.class,
    tag: animal.tag,
    visual_tags: JSON.stringify(animal.visualTags),
    former_tags: JSON.stringify(animal.formerTags),
    in_milk: animal.inMilk ? 1 : 0,
    in_milk_since_ms: animal.inMilkSinceMs,
    born_at_ms: animal.bornAtMs,
    bred_at_ms: animal.bredAtMs,
    kidded_at_ms: animal.kiddedAtMs,
    males_removed_at_ms: animal.malesRemovedAtMs,
    pen: animal.pen,
    mark: animal.mark,
    photo: animal.photo,
    life: life.kind,
    left_at_ms: life.kind === 'present' ? null : life.atMs,
    left_by: life.kind === 'present' ? null : life.by,
    merged_into_id: life.kind === 'merged' ? life.intoId : null,
  };
}

import { type FieldsSaid, fieldsNow } from '../../core/hub/fields.ts';
import { CHANGING_COLUMNS } from './animals.ts';
import type { Db } from './open-store.ts';
import type { ToldBody } from './told-bodies.ts';

interface Word {
  readonly id: string;
  readonly clock: string;
  readonly body: string;
}

/** Keeps the herd as all kiosks' words on it say: field by field, whatever order they came in. */
export function createAnimalReceiver(db: Db) {
  const columns = CHANGING_COLUMNS.join(', ');
  const insert = db.prepare(
    `INSERT INTO animals (id, ${columns}) VALUES (@animal, ${CHANGING_COLUMNS.map((name) => `@${name}`).join(', ')})`,
  );
  const row = db.prepare<[string], Record<string, unknown>>(
    `SELECT number, ${columns} FROM animals WHERE id = ?`,
  );
  const remember = db.prepare(
    'INSERT INTO animal_changes (animal, at_ms, by, before, after) VALUES (?, ?, ?, ?, ?)',
  );
  const words = db.prepare<[string], Word>('SELECT id, clock, body FROM events WHERE animal = ?');
  const update = db.prepare(
    `UPDATE animals SET ${CHANGING_COLUMNS.map((name) => `${name} = @${name}`).join(', ')} WHERE id = @animal`,
  );
  const mergedInto = db
    .prepare<[string], string | null>("SELECT merged_into_id FROM animals WHERE id = ? AND life = 'merged'")
    .pluck();

  function numbered(id: string): Record<string, unknown> {
    const found = row.get(id);
    if (found === undefined) throw new NotYet(`animal ${id}`);
    return found;
  }

  /** The records that were merged in a ring by kiosks that did not know of each other's merge. */
  function ring(id: string): string[] {
    const seen = [id];
    for (let next = mergedInto.get(id); next != null; next = mergedInto.get(next)) {
      if (next === id) return seen;
      if (seen.includes(next)) return [];
      seen.push(next);
    }
    return [];
  }

  function settle(id: string): void {
    const said = words.all(id).map((word): FieldsSaid => {
      const { fields, over } = JSON.parse(word.body) as ToldBody<'animal-change'>;
      return { id: word.id, clock: word.clock, fields, over: over as FieldsSaid['over'] };
    });
    update.run({ ...numbered(id), ...fieldsNow(said, CHANGING_COLUMNS), animal: id });
    // No record of a ring would go on: the one of the smallest id does.
    const [first] = ring(id).sort();
    if (first === undefined) return;
    const stays = { life: 'present', left_at_ms: null, left_by: null, merged_into_id: null };
    update.run({ ...numbered(first), ...stays, animal: first });
  }

  return {
    /** Takes in an animal that another kiosk enrolled; answers its number here. */
    enrolled({ animal, fields }: ToldBody<'animal'>): number {
      return Number(insert.run({ animal, ...fields }).lastInsertRowid);
    },
    /** Takes in a change of one; answers its number. Its word must be among the events before `settle`. */
    changed({ animal, at_ms, by, fields }: ToldBody<'animal-change'>): number {
      const before = numbered(animal);
      const was = Object.fromEntries(Object.keys(fields).map((field) => [field, before[field]]));
      const change = remember.run(before['number'], at_ms, by, JSON.stringify(was), JSON.stringify(fields));
      return Number(change.lastInsertRowid);
    },
    /** Makes an animal what all words on it say. */
    settle,
  };
}

/** What an event names has not come yet. */
export class NotYet extends Error {}

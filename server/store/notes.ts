import { z } from 'zod';
import { AnimalNote } from '../../shared/animal.ts';
import { recordsOf } from './merged.ts';
import type { Db } from './open-store.ts';

const Row = z.strictObject({ at_ms: z.int(), by: z.string(), note: AnimalNote });

/** Something noted of an animal, picked from the list. */
export interface NoteTaken {
  readonly atMs: number;
  readonly by: string;
  readonly note: AnimalNote;
}

/** Notes on disk, never edited and never deleted. */
export function createNoteStore(db: Db) {
  const insert = db.prepare(
    'INSERT INTO notes (animal, at_ms, by, note) VALUES ((SELECT number FROM animals WHERE id = ?), ?, ?, ?)',
  );
  const newest = db.prepare(
    `SELECT at_ms, by, note FROM notes WHERE animal IN ${recordsOf('?')}
     ORDER BY at_ms DESC, sequence DESC LIMIT ?`,
  );
  return {
    /** Writes a note. */
    add(animalId: string, { atMs, by, note }: NoteTaken): void {
      insert.run(animalId, atMs, by, note);
    },
    /** The newest notes of an animal, newest first, at most so many. */
    newest(animalId: string, most: number): NoteTaken[] {
      return newest.all(animalId, most).map((raw) => {
        const { at_ms, by, note } = Row.parse(raw);
        return { atMs: at_ms, by, note };
      });
    },
  };
}

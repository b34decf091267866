import type { Db } from './open-store.ts';

/**
 * Merges of two records of one animal, and where they were parted again: each a fact with who and when.
 *
 * `before` and `after` hold the columns of the record that went on that the merge changed. All that was written under the
 * record that went up in it stays where it is; it is read under the other for as long as they are merged.
 */
export const MERGE_SCHEMA = `
  CREATE TABLE animal_merges (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    kind TEXT NOT NULL CHECK (kind IN ('merged', 'parted')),
    kept INTEGER NOT NULL REFERENCES animals (number),
    gone INTEGER NOT NULL REFERENCES animals (number),
    at_ms INTEGER NOT NULL,
    by TEXT NOT NULL,
    before TEXT NOT NULL CHECK (json_valid(before)),
    after TEXT NOT NULL CHECK (json_valid(after)),
    CHECK (kept <> gone)
  ) STRICT;
  CREATE INDEX merges_of_a_record ON animal_merges (gone);
  CREATE INDEX records_merged_into ON animals (merged_into_id) WHERE life = 'merged';

  CREATE TRIGGER animal_merges_are_never_edited BEFORE UPDATE ON animal_merges
  BEGIN SELECT RAISE(ABORT, 'a merge is never edited: its end stands beside it'); END;
  CREATE TRIGGER animal_merges_are_never_deleted BEFORE DELETE ON animal_merges
  BEGIN SELECT RAISE(ABORT, 'nothing is deleted of an animal'); END;
`;

/** SQL for the numbers of all records that are one animal with the record of an id (an expression of SQL). */
export function recordsOf(id: string): string {
  return `(WITH RECURSIVE one (id) AS (
    SELECT ${id} UNION SELECT animals.id FROM one JOIN animals ON merged_into_id = one.id AND life = 'merged'
  ) SELECT number FROM one JOIN animals USING (id))`;
}

/** SQL for the id under which the record of an id (an expression of SQL) goes on: its own, unless it was merged away. */
export function goingOn(id: string): string {
  return `(WITH RECURSIVE up (id) AS (
    SELECT ${id} UNION SELECT merged_into_id FROM up JOIN animals USING (id) WHERE life = 'merged'
  ) SELECT id FROM up JOIN animals USING (id) WHERE life <> 'merged')`;
}

/** Answers under which id the record of an id goes on; an id that is no animal's is answered as it is. */
export function createGoesOn(db: Db): (id: string) => string {
  const query = db.prepare<[string], string | null>(`SELECT ${goingOn('?')}`).pluck();
  return (id) => query.get(id) ?? id;
}

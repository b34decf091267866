import { z } from 'zod';
import { bodyConditionFrom, eyelidFrom, type Scores, soilingFrom } from '../../core/worms/scores.ts';
import { goingOn, recordsOf } from './merged.ts';
import type { Db } from './open-store.ts';

const Row = z.strictObject({
  animal_id: z.string(),
  at_ms: z.int(),
  by: z.string(),
  eyelid: z.number().nullable(),
  body: z.number().nullable(),
  soiling: z.number().nullable(),
  jaw: z.enum(['none', 'swollen']).nullable(),
  coat: z.enum(['smooth', 'rough']).nullable(),
});

const Numbered = z.looseObject({ sequence: z.int() });

/** Scores with the animal they were seen at. */
export interface AnimalScores extends Scores {
  readonly animalId: string;
}

/** Scores on disk, never edited and never deleted; one that was taken back is read no more. */
export function createScoreStore(db: Db) {
  const insert = db.prepare(
    `INSERT INTO scores (animal, at_ms, by, eyelid, body, soiling, jaw, coat)
     VALUES ((SELECT number FROM animals WHERE id = @animalId), @atMs, @by, @eyelid, @body, @soiling, @jaw, @coat)`,
  );
  const PARTS = `${goingOn('animals.id')} AS animal_id, at_ms, by, eyelid, body, soiling, jaw, coat`;
  const FROM = 'FROM scores JOIN animals ON animals.number = scores.animal';
  const STANDS = `NOT EXISTS (SELECT 1 FROM scores_taken_back AS back
     WHERE back.animal = scores.animal AND back.scored_at_ms = scores.at_ms)`;
  const back = db.prepare(
    `INSERT INTO scores_taken_back (animal, scored_at_ms, at_ms, by)
     SELECT DISTINCT animal, at_ms, @atMs, @by FROM scores
     WHERE animal IN ${recordsOf('@animalId')} AND at_ms = @scoredAtMs AND ${STANDS}`,
  );
  const newest = db.prepare(
    `SELECT ${PARTS} ${FROM} WHERE animal IN ${recordsOf('?')} AND ${STANDS}
     ORDER BY at_ms DESC, sequence DESC LIMIT ?`,
  );
  const after = db.prepare(
    `SELECT sequence, ${PARTS} ${FROM} WHERE sequence > @after AND at_ms >= @fromMs AND at_ms < @toMs AND ${STANDS}
       AND (@animalId IS NULL OR animal IN ${recordsOf('@animalId')}) ORDER BY sequence LIMIT @most`,
  );
  return {
    /** Scores after a number, oldest first, at most so many, each with its number. */
    after(
      asked: { readonly animalId: string | null; readonly fromMs: number; readonly toMs: number },
      number: number,
      most: number,
    ): (AnimalScores & { readonly sequence: number })[] {
      return after.all({ ...asked, after: number, most }).map((raw) => {
        const { sequence, ...row } = Numbered.parse(raw);
        return { sequence, ...toScores(row) };
      });
    },
    /** Writes what was seen of an animal. */
    add({ animalId, atMs, by, eyelid, body, soiling, jaw, coat }: AnimalScores): void {
      insert.run({ animalId, atMs, by, eyelid, body, soiling, jaw, coat });
    },
    /** Takes back what was scored of an animal at an instant; false where nothing that stands was. */
    takeBack(taken: {
      readonly animalId: string;
      readonly scoredAtMs: number;
      readonly atMs: number;
      readonly by: string;
    }): boolean {
      return back.run(taken).changes > 0;
    },
    /** The newest scores of an animal, newest first, at most so many. */
    newest(animalId: string, most: number): AnimalScores[] {
      return newest.all(animalId, most).map(toScores);
    },
  };
}

function toScores(raw: unknown): AnimalScores {
  const row = Row.parse(raw);
  return {
    animalId: row.animal_id,
    atMs: row.at_ms,
    by: row.by,
    eyelid: row.eyelid === null ? null : eyelidFrom(row.eyelid),
    body: row.body === null ? null : bodyConditionFrom(row.body),
    soiling: row.soiling === null ? null : soilingFrom(row.soiling),
    jaw: row.jaw,
    coat: row.coat,
  };
}

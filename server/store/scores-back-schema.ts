/** Scores that were taken back: a score of the wrong animal stays on disk as it was written, and counts no more. */
export const SCORES_BACK_SCHEMA = `
  CREATE TABLE scores_taken_back (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    animal INTEGER NOT NULL REFERENCES animals (number),
    scored_at_ms INTEGER NOT NULL,
    at_ms INTEGER NOT NULL,
    by TEXT NOT NULL
  ) STRICT;
  CREATE INDEX scores_of_an_animal_taken_back ON scores_taken_back (animal, scored_at_ms);

  CREATE TRIGGER scores_taken_back_are_never_edited BEFORE UPDATE ON scores_taken_back
  BEGIN SELECT RAISE(ABORT, 'what was taken back is never edited: score the animal again'); END;
  CREATE TRIGGER scores_taken_back_are_never_deleted BEFORE DELETE ON scores_taken_back
  BEGIN SELECT RAISE(ABORT, 'nothing is deleted of an animal'); END;
`;

/**
 * What was told of the clock: a record, which dates the treatments and jugs of the same start of the board anew.
 *
 * `was_ms` is what the kiosk went by, `is_ms` what the time was. `treatments_before` and `jugs_before` are the newest
 * numbers there were then: what they date later than it was is known to be dated wrong.
 */
export const CLOCK_SCHEMA = `
  CREATE TABLE clock_corrections (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL UNIQUE,
    board_start TEXT NOT NULL,
    board_since_ms REAL NOT NULL,
    was_ms INTEGER,
    is_ms INTEGER NOT NULL,
    told TEXT NOT NULL CHECK (told IN ('person', 'server', 'board')),
    by TEXT NOT NULL,
    time_zone TEXT NOT NULL,
    treatments_before INTEGER NOT NULL,
    jugs_before INTEGER NOT NULL
  ) STRICT;

  CREATE TRIGGER clock_corrections_are_never_edited BEFORE UPDATE ON clock_corrections
  BEGIN SELECT RAISE(ABORT, 'what was told of the clock is never edited: a later word stands beside it'); END;
  CREATE TRIGGER clock_corrections_are_never_deleted BEFORE DELETE ON clock_corrections
  BEGIN SELECT RAISE(ABORT, 'nothing is deleted of what was told of the clock'); END;

  ALTER TABLE jugs ADD COLUMN board_start TEXT;
  ALTER TABLE jugs ADD COLUMN board_since_ms REAL;
`;

/**
 * Lets words on the clock reach other kiosks: those written before are told in a life of their own, and the lines a word of
 * another kiosk dates are found. What was written here by a clock that was trusted is not in the index, so that an
 * ordinary dose writes no page more.
 */
export const CLOCK_TOLD_SCHEMA = `
  CREATE INDEX lines_of_a_start ON book_lines (board_start) WHERE received = 1 OR trusted = 0;
  DELETE FROM kiosk_self WHERE EXISTS (SELECT 1 FROM clock_corrections);
`;

/**
 * What the day book is searched by: a line a record, in the order they were written.
 *
 * A line is no record. It says what a treatment means today, its corrections read, and can be made anew from the records
 * at any time; so it may be edited. Animals and jugs stand in it by their numbers, since it is a long table.
 *
 * `rests` tells that a known rest of a part dose is left. `filed_at_ms` is where it is looked for by days: its date, or for a date nobody trusts the latest known when it was
 * written. `meat_until_ms` and `milk_until_ms` are when it ends, or one of the two marks of what never ends by itself.
 */
export const BOOK_SCHEMA = `
  ALTER TABLE untreated ADD COLUMN clock_trusted INTEGER CHECK (clock_trusted IN (0, 1));
  CREATE INDEX corrections_of_a_treatment ON corrections (treatment_id);

  CREATE TABLE book_lines (
    line INTEGER PRIMARY KEY,
    kind TEXT NOT NULL CHECK (kind IN ('treatment', 'skipped', 'lapsed', 'not-given')),
    sequence INTEGER NOT NULL,
    filed_at_ms INTEGER NOT NULL,
    at_ms INTEGER NOT NULL,
    trusted INTEGER NOT NULL CHECK (trusted IN (0, 1)),
    by TEXT NOT NULL,
    corrected INTEGER NOT NULL CHECK (corrected IN (0, 1)),
    stood INTEGER REFERENCES animals (number),
    dosed INTEGER REFERENCES animals (number),
    medicine TEXT,
    jug INTEGER,
    volume_ml REAL,
    doubt_ml REAL,
    draws INTEGER,
    rests INTEGER,
    weighed_at_ms INTEGER,
    mass_g REAL,
    uncertainty_g REAL,
    meat_until_ms INTEGER,
    meat_undated INTEGER,
    milk_until_ms INTEGER,
    milk_undated INTEGER
  ) STRICT;

  CREATE UNIQUE INDEX line_of_a_treatment ON book_lines (sequence) WHERE kind = 'treatment';
  CREATE INDEX lines_by_day ON book_lines (filed_at_ms, line);
  CREATE INDEX lines_of_an_animal ON book_lines (stood, filed_at_ms, line);
  CREATE INDEX lines_of_a_medicine ON book_lines (medicine, filed_at_ms, line);
  CREATE INDEX lines_of_a_person ON book_lines (by, filed_at_ms, line);
  CREATE INDEX lines_of_a_medicine_by_a_person ON book_lines (medicine, by, filed_at_ms, line);
  CREATE INDEX lines_corrected ON book_lines (filed_at_ms, line) WHERE corrected = 1;
  CREATE INDEX lines_without_a_dose ON book_lines (filed_at_ms, line) WHERE kind <> 'treatment';
  CREATE INDEX doses_in_order ON book_lines (dosed, medicine, trusted, line) WHERE dosed IS NOT NULL;
  CREATE INDEX doses_by_date ON book_lines (dosed, medicine, trusted, at_ms) WHERE dosed IS NOT NULL;
  CREATE INDEX drawn_from_a_jug ON book_lines (jug) WHERE dosed IS NOT NULL;
  CREATE INDEX weights_by_doses ON book_lines (stood, weighed_at_ms) WHERE weighed_at_ms IS NOT NULL;
  CREATE INDEX meat_kept_back ON book_lines (dosed, meat_until_ms, line) WHERE dosed IS NOT NULL;
  CREATE INDEX milk_kept_back ON book_lines (dosed, milk_until_ms, line) WHERE dosed IS NOT NULL;
  CREATE INDEX meat_undated ON book_lines (dosed, line) WHERE meat_undated = 1;
  CREATE INDEX milk_undated ON book_lines (dosed, line) WHERE milk_undated = 1;

  CREATE INDEX jugs_by_use ON jugs (discarded_at_ms, use_by_ms);
`;

/**
 * Indexes that hold what a page is narrowed by, so that lines which do not fit are passed over without being read: an
 * animal's ten years are thousands of lines, and a medicine it never had is among none of them.
 */
export const BOOK_INDEXES = `
  DROP INDEX lines_of_an_animal;
  CREATE INDEX lines_of_an_animal ON book_lines (stood, filed_at_ms, line, kind, medicine, by, corrected, sequence);
  DROP INDEX lines_without_a_dose;
  CREATE INDEX lines_without_a_dose ON book_lines (filed_at_ms, line, kind, by, sequence) WHERE kind <> 'treatment';
`;

/** The running time of the board at a dose, which tells its age within one start of the board whatever the clock says. */
export const BOARD_TIME_SCHEMA = `
  ALTER TABLE book_lines ADD COLUMN board_start TEXT;
  ALTER TABLE book_lines ADD COLUMN board_since_ms REAL;
`;

/** Where the day book keeps back for ever: no time is known, or never for people. Both are beyond every date. */
export const NEVER_BY_ITSELF = { unknown: 8_640_000_000_000_001, 'not-for-people': 8_640_000_000_000_002 };

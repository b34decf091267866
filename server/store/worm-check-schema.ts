/** Egg counts and reduction tests. A method is kept by its figures, so that its factor stays exact. */
export const WORM_CHECK_SCHEMA = `
  CREATE TABLE reduction_tests (
    number INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE,
    medicine_id TEXT NOT NULL,
    species TEXT NOT NULL CHECK (species IN ('goat', 'sheep', 'cattle')),
    design TEXT NOT NULL CHECK (design IN ('paired', 'unpaired')),
    protocol TEXT NOT NULL CHECK (protocol IN ('clinical', 'research')),
    method TEXT NOT NULL CHECK (json_valid(method)),
    planned_at_ms INTEGER NOT NULL,
    by TEXT NOT NULL
  ) STRICT;

  CREATE TABLE reduction_test_animals (
    test INTEGER NOT NULL REFERENCES reduction_tests (number),
    animal INTEGER NOT NULL REFERENCES animals (number),
    treatment_id TEXT REFERENCES treatments (id),
    PRIMARY KEY (test, animal)
  ) STRICT, WITHOUT ROWID;

  CREATE TABLE reduction_test_ends (
    test INTEGER PRIMARY KEY REFERENCES reduction_tests (number),
    how TEXT NOT NULL CHECK (how IN ('judged', 'given-up')),
    at_ms INTEGER NOT NULL,
    by TEXT NOT NULL
  ) STRICT;

  CREATE TABLE egg_counts (
    number INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE,
    eggs INTEGER NOT NULL CHECK (eggs BETWEEN 0 AND 10000),
    dung_g REAL CHECK (dung_g > 0),
    suspension_ml REAL CHECK (suspension_ml > 0),
    counted_ml REAL CHECK (counted_ml > 0 AND counted_ml <= suspension_ml),
    told_factor REAL CHECK (told_factor > 0),
    purpose TEXT NOT NULL CHECK (purpose IN ('herd', 'ill', 'bought-in', 'test')),
    test INTEGER REFERENCES reduction_tests (number),
    stage TEXT CHECK (stage IN ('before', 'after')),
    taken_at_ms INTEGER NOT NULL,
    logged_at_ms INTEGER NOT NULL,
    by TEXT NOT NULL,
    CHECK ((told_factor IS NULL) = (dung_g IS NOT NULL AND suspension_ml IS NOT NULL AND counted_ml IS NOT NULL)),
    CHECK ((purpose = 'test') = (test IS NOT NULL) AND (test IS NULL) = (stage IS NULL))
  ) STRICT;

  CREATE TABLE egg_count_animals (
    count INTEGER NOT NULL REFERENCES egg_counts (number),
    animal INTEGER NOT NULL REFERENCES animals (number),
    PRIMARY KEY (count, animal)
  ) STRICT, WITHOUT ROWID;

  CREATE TABLE egg_count_corrections (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL UNIQUE,
    count_id TEXT NOT NULL REFERENCES egg_counts (id),
    kind TEXT NOT NULL CHECK (kind IN ('taken-back', 'other-number')),
    eggs INTEGER CHECK (eggs BETWEEN 0 AND 10000),
    at_ms INTEGER NOT NULL,
    by TEXT NOT NULL,
    CHECK ((kind = 'other-number') = (eggs IS NOT NULL))
  ) STRICT;
  ${[
    'reduction_tests',
    'reduction_test_animals',
    'reduction_test_ends',
    'egg_counts',
    'egg_count_animals',
    'egg_count_corrections',
  ]
    .map(
      (table) => `
  CREATE TRIGGER ${table}_are_never_edited BEFORE UPDATE ON ${table}
  BEGIN SELECT RAISE(ABORT, 'the worm check is never edited'); END;
  CREATE TRIGGER ${table}_are_never_deleted BEFORE DELETE ON ${table}
  BEGIN SELECT RAISE(ABORT, 'nothing is deleted from the worm check'); END;`,
    )
    .join('')}
`;

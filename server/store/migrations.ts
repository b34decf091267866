import { BOARD_TIME_SCHEMA, BOOK_INDEXES, BOOK_SCHEMA } from './book-schema.ts';
import { CHAIN_OF_CLOCK_SCHEMA, CHAIN_SCHEMA, chainRecords } from './chain.ts';
import { CLOCK_SCHEMA, CLOCK_TOLD_SCHEMA } from './clock-schema.ts';
import { EVENT_SCHEMA, RECEIVED_SCHEMA } from './event-schema.ts';
import { HERD_SCHEMA } from './herd-schema.ts';
import { MERGE_SCHEMA } from './merged.ts';
import type { Db } from './open-store.ts';
import { SCORES_BACK_SCHEMA } from './scores-back-schema.ts';
import { STOCK_SCHEMA } from './stock-schema.ts';
import { UPKEEP_SCHEMA } from './upkeep.ts';
import { WEATHER_SCHEMA } from './weather-schema.ts';
import { WORM_CHECK_SCHEMA } from './worm-check-schema.ts';

/** One step of the schema: SQL, or what SQL alone cannot do. */
export type Migration = string | ((db: Db) => void);

/** The schema, ordered and append-only: a released entry is never edited, a change is a new entry. */
export const MIGRATIONS: readonly Migration[] = [
  `
  CREATE TABLE animals (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL UNIQUE,
    species TEXT NOT NULL CHECK (species IN ('goat', 'sheep', 'cattle')),
    class TEXT NOT NULL CHECK (class IN ('female', 'male', 'castrate', 'young')),
    tag TEXT UNIQUE CHECK (tag IS NULL OR length(tag) = 15),
    in_milk INTEGER NOT NULL CHECK (in_milk IN (0, 1)),
    bred_at_ms INTEGER,
    first_weight_g REAL,
    first_weighed_at_ms INTEGER
  ) STRICT;

  CREATE TABLE jugs (
    id TEXT PRIMARY KEY,
    number INTEGER NOT NULL UNIQUE,
    medicine_id TEXT NOT NULL,
    packet_id TEXT NOT NULL,
    strength_mg_per_ml REAL NOT NULL CHECK (strength_mg_per_ml > 0),
    strength_uncertainty REAL NOT NULL CHECK (strength_uncertainty >= 0),
    volume_ml REAL NOT NULL CHECK (volume_ml > 0),
    mixed_at_ms INTEGER NOT NULL,
    use_by_ms INTEGER NOT NULL,
    mixed_by TEXT NOT NULL,
    clock_trusted INTEGER NOT NULL CHECK (clock_trusted IN (0, 1)),
    discarded_at_ms INTEGER
  ) STRICT;

  CREATE TABLE treatments (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL UNIQUE,
    offer_id TEXT NOT NULL UNIQUE,
    animal_id TEXT NOT NULL REFERENCES animals (id),
    jug_id TEXT NOT NULL REFERENCES jugs (id),
    medicine_id TEXT NOT NULL,
    given_at_ms INTEGER NOT NULL,
    given_by TEXT NOT NULL,
    weight_g REAL NOT NULL CHECK (weight_g > 0),
    volume_ml REAL NOT NULL CHECK (volume_ml > 0),
    strength_mg_per_ml REAL NOT NULL CHECK (strength_mg_per_ml > 0),
    outcome TEXT NOT NULL CHECK (outcome IN ('whole', 'part', 'spat-out')),
    record TEXT NOT NULL CHECK (json_valid(record))
  ) STRICT;

  CREATE TABLE corrections (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL UNIQUE,
    treatment_id TEXT NOT NULL REFERENCES treatments (id),
    kind TEXT NOT NULL CHECK (kind IN ('not-given', 'wrong-animal', 'wrong-volume')),
    animal_id TEXT REFERENCES animals (id),
    volume_ml REAL CHECK (volume_ml > 0),
    at_ms INTEGER NOT NULL,
    by TEXT NOT NULL
  ) STRICT;

  CREATE TABLE untreated (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL UNIQUE,
    kind TEXT NOT NULL CHECK (kind IN ('skipped', 'lapsed', 'not-given')),
    animal_id TEXT REFERENCES animals (id),
    offer_id TEXT,
    reason TEXT,
    weight_g REAL CHECK (weight_g > 0),
    at_ms INTEGER NOT NULL,
    by TEXT NOT NULL
  ) STRICT;

  CREATE TABLE approvals (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    regimen_id TEXT NOT NULL,
    kind TEXT NOT NULL CHECK (kind IN ('approved', 'withdrawn')),
    direction TEXT CHECK (direction IN ('label', 'veterinarian')),
    meat_hours INTEGER CHECK (meat_hours >= 0),
    milk_hours INTEGER CHECK (milk_hours >= 0),
    at_ms INTEGER NOT NULL,
    by TEXT NOT NULL
  ) STRICT;

  CREATE TABLE settings (
    name TEXT PRIMARY KEY,
    value TEXT NOT NULL CHECK (json_valid(value))
  ) STRICT;

  CREATE TABLE handled_intents (
    id TEXT PRIMARY KEY,
    digest TEXT NOT NULL,
    at_ms INTEGER NOT NULL
  ) STRICT;
  `,
  ...['treatments', 'corrections', 'untreated', 'approvals'].map(
    (table) => `
  CREATE TRIGGER ${table}_are_never_edited BEFORE UPDATE ON ${table}
  BEGIN SELECT RAISE(ABORT, 'the day book is never edited'); END;
  CREATE TRIGGER ${table}_are_never_deleted BEFORE DELETE ON ${table}
  BEGIN SELECT RAISE(ABORT, 'nothing is deleted from the day book'); END;
  `,
  ),
  `
  CREATE TABLE scale_checks (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL UNIQUE,
    role TEXT NOT NULL CHECK (role IN ('platform', 'bench')),
    verdict TEXT NOT NULL CHECK (verdict IN ('passed', 'failed')),
    at_ms INTEGER NOT NULL,
    by TEXT NOT NULL,
    clock_trusted INTEGER NOT NULL CHECK (clock_trusted IN (0, 1)),
    record TEXT NOT NULL CHECK (json_valid(record))
  ) STRICT;

  CREATE TABLE syringe_checks (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL UNIQUE,
    syringe_id TEXT NOT NULL,
    mark_ml REAL NOT NULL CHECK (mark_ml > 0),
    bias_ml REAL NOT NULL,
    spread_ml REAL NOT NULL CHECK (spread_ml >= 0),
    at_ms INTEGER NOT NULL,
    by TEXT NOT NULL,
    clock_trusted INTEGER NOT NULL CHECK (clock_trusted IN (0, 1)),
    record TEXT NOT NULL CHECK (json_valid(record))
  ) STRICT;

  CREATE TRIGGER scale_checks_are_never_edited BEFORE UPDATE ON scale_checks
  BEGIN SELECT RAISE(ABORT, 'a check is never edited'); END;
  CREATE TRIGGER scale_checks_are_never_deleted BEFORE DELETE ON scale_checks
  BEGIN SELECT RAISE(ABORT, 'nothing is deleted from the checks'); END;
  CREATE TRIGGER syringe_checks_are_never_edited BEFORE UPDATE ON syringe_checks
  BEGIN SELECT RAISE(ABORT, 'a check is never edited'); END;
  CREATE TRIGGER syringe_checks_are_never_deleted BEFORE DELETE ON syringe_checks
  BEGIN SELECT RAISE(ABORT, 'nothing is deleted from the checks'); END;
  `,
  `
  ALTER TABLE approvals ADD COLUMN meat_days INTEGER CHECK (meat_days >= 0);
  ALTER TABLE approvals ADD COLUMN milk_days INTEGER CHECK (milk_days >= 0);
  ALTER TABLE approvals ADD COLUMN target_mg_per_kg REAL CHECK (target_mg_per_kg > 0);
  ALTER TABLE approvals ADD COLUMN vet TEXT;
  ALTER TABLE approvals ADD COLUMN figures TEXT;

  ALTER TABLE animals ADD COLUMN born_at_ms INTEGER;
  ALTER TABLE animals ADD COLUMN males_removed_at_ms INTEGER;
  `,
  `
  CREATE TABLE syringe_checks_forgotten (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    check_id TEXT NOT NULL UNIQUE REFERENCES syringe_checks (id),
    at_ms INTEGER NOT NULL,
    by TEXT NOT NULL
  ) STRICT;

  CREATE TRIGGER syringe_checks_forgotten_are_never_edited BEFORE UPDATE ON syringe_checks_forgotten
  BEGIN SELECT RAISE(ABORT, 'a check is never edited'); END;
  CREATE TRIGGER syringe_checks_forgotten_are_never_deleted BEFORE DELETE ON syringe_checks_forgotten
  BEGIN SELECT RAISE(ABORT, 'nothing is deleted from the checks'); END;
  `,
  `
  CREATE TABLE vessels (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL UNIQUE,
    letter TEXT NOT NULL,
    empty_g REAL NOT NULL CHECK (empty_g > 0),
    uncertainty_g REAL NOT NULL CHECK (uncertainty_g >= 0),
    learned_at_ms INTEGER NOT NULL,
    learned_by TEXT NOT NULL,
    retired_at_ms INTEGER
  ) STRICT;

  CREATE UNIQUE INDEX one_vessel_a_letter ON vessels (letter) WHERE retired_at_ms IS NULL;

  ALTER TABLE jugs ADD COLUMN weighed TEXT CHECK (weighed IS NULL OR json_valid(weighed));
  `,
  // A CHECK cannot be changed in place: the rows move to a table that also takes a veterinarian's time.
  `
  CREATE TABLE corrections_with_times (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL UNIQUE,
    treatment_id TEXT NOT NULL REFERENCES treatments (id),
    kind TEXT NOT NULL CHECK (kind IN ('not-given', 'wrong-animal', 'wrong-volume', 'vet-time')),
    animal_id TEXT REFERENCES animals (id),
    volume_ml REAL CHECK (volume_ml > 0),
    meat_hours INTEGER CHECK (meat_hours >= 0),
    meat_days INTEGER CHECK (meat_days >= 0),
    milk_hours INTEGER CHECK (milk_hours >= 0),
    milk_days INTEGER CHECK (milk_days >= 0),
    at_ms INTEGER NOT NULL,
    by TEXT NOT NULL
  ) STRICT;
  INSERT INTO corrections_with_times (sequence, id, treatment_id, kind, animal_id, volume_ml, at_ms, by)
    SELECT sequence, id, treatment_id, kind, animal_id, volume_ml, at_ms, by FROM corrections;
  DROP TABLE corrections;
  ALTER TABLE corrections_with_times RENAME TO corrections;
  CREATE TRIGGER corrections_are_never_edited BEFORE UPDATE ON corrections
  BEGIN SELECT RAISE(ABORT, 'the day book is never edited'); END;
  CREATE TRIGGER corrections_are_never_deleted BEFORE DELETE ON corrections
  BEGIN SELECT RAISE(ABORT, 'nothing is deleted from the day book'); END;
  `,
  HERD_SCHEMA,
  `
  CREATE TABLE worm_rules (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    rule TEXT NOT NULL,
    season TEXT CHECK (season IN ('high', 'low')),
    class TEXT CHECK (class IN ('female', 'male', 'castrate', 'young')),
    value REAL,
    word TEXT NOT NULL CHECK (word IN ('farm', 'veterinarian')),
    at_ms INTEGER NOT NULL,
    by TEXT NOT NULL,
    CHECK ((season IS NULL) = (class IS NULL))
  ) STRICT;

  CREATE TRIGGER worm_rules_are_never_edited BEFORE UPDATE ON worm_rules
  BEGIN SELECT RAISE(ABORT, 'a threshold set is never edited: a later one stands beside it'); END;
  CREATE TRIGGER worm_rules_are_never_deleted BEFORE DELETE ON worm_rules
  BEGIN SELECT RAISE(ABORT, 'nothing is deleted from the thresholds'); END;
  `,
  `
  CREATE TABLE weight_words (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    animal INTEGER NOT NULL REFERENCES animals (number),
    weighing TEXT NOT NULL,
    said TEXT CHECK (said IN ('true', 'wrong')),
    hours_off_feed REAL CHECK (hours_off_feed >= 0),
    at_ms INTEGER NOT NULL,
    by TEXT NOT NULL,
    CHECK ((said IS NULL) <> (hours_off_feed IS NULL))
  ) STRICT;
  CREATE INDEX words_on_the_weights_of_an_animal ON weight_words (animal, weighing);

  CREATE TRIGGER weight_words_are_never_edited BEFORE UPDATE ON weight_words
  BEGIN SELECT RAISE(ABORT, 'what was said of a weight is never edited: a later word stands beside it'); END;
  CREATE TRIGGER weight_words_are_never_deleted BEFORE DELETE ON weight_words
  BEGIN SELECT RAISE(ABORT, 'nothing is deleted of a weight'); END;
  `,
  STOCK_SCHEMA,
  WEATHER_SCHEMA,
  WORM_CHECK_SCHEMA,
  BOOK_SCHEMA,
  BOOK_INDEXES,
  MERGE_SCHEMA,
  (db) => {
    db.exec(CHAIN_SCHEMA);
    chainRecords(db);
  },
  UPKEEP_SCHEMA,
  BOARD_TIME_SCHEMA,
  EVENT_SCHEMA,
  RECEIVED_SCHEMA,
  CLOCK_SCHEMA + CHAIN_OF_CLOCK_SCHEMA,
  CLOCK_TOLD_SCHEMA,
  SCORES_BACK_SCHEMA,
];

/** Takes one step of the schema. Belongs in a transaction. */
export function migrate(db: Db, step: Migration): void {
  if (typeof step === 'string') db.exec(step);
  else step(db);
}

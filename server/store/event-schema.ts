/**
 * What this kiosk told of its records, for other kiosks of the farm: one event a record.
 *
 * `kiosk_lives` names kiosks and their lives, so that a long table holds them by a number. `kiosk_self` has one row: the
 * life this kiosk is in, and its clock. Without it (a new file, a restored or rescued one) a new life begins at the next
 * opening. `body` is what is told; where it is NULL the record itself is read, which is never edited.
 */
export const EVENT_SCHEMA = `
  CREATE TABLE kiosk_lives (
    number INTEGER PRIMARY KEY,
    kiosk TEXT NOT NULL,
    life TEXT NOT NULL UNIQUE
  ) STRICT;

  CREATE TABLE kiosk_self (
    one INTEGER PRIMARY KEY CHECK (one = 1),
    life INTEGER NOT NULL REFERENCES kiosk_lives (number),
    clock TEXT NOT NULL
  ) STRICT;

  CREATE TABLE events (
    number INTEGER PRIMARY KEY,
    life INTEGER NOT NULL REFERENCES kiosk_lives (number),
    sequence INTEGER NOT NULL CHECK (sequence > 0),
    id TEXT NOT NULL UNIQUE,
    clock TEXT NOT NULL,
    kind TEXT NOT NULL,
    record ANY NOT NULL,
    animal TEXT,
    body TEXT CHECK (body IS NULL OR json_valid(body)),
    UNIQUE (life, sequence),
    UNIQUE (kind, record)
  ) STRICT;
  CREATE INDEX changes_of_an_animal ON events (animal) WHERE animal IS NOT NULL;

  CREATE TRIGGER events_are_never_edited BEFORE UPDATE ON events
  BEGIN SELECT RAISE(ABORT, 'what was told is never edited'); END;
  CREATE TRIGGER events_are_never_deleted BEFORE DELETE ON events
  BEGIN SELECT RAISE(ABORT, 'nothing that was told is deleted'); END;
`;

/**
 * What came from other kiosks.
 *
 * `events_waiting` holds what cannot be taken in yet: something it names has not come, or this program does not know it.
 * `hub_kiosks` names the others. `dosed_apart` pairs treatments that two kiosks gave without knowing of each other's, and
 * `dosed_apart_seen` tells who read that. Two animals of one name or tag may meet here, so that the file no longer forbids
 * it: a rule of the connection does, for what is written at this kiosk. In which life and under which number an event is
 * told may change, where others hold another under that number.
 */
export const RECEIVED_SCHEMA = `
  CREATE TABLE events_waiting (
    life INTEGER NOT NULL REFERENCES kiosk_lives (number),
    sequence INTEGER NOT NULL CHECK (sequence > 0),
    id TEXT NOT NULL UNIQUE,
    clock TEXT NOT NULL,
    kind TEXT NOT NULL,
    body TEXT NOT NULL CHECK (json_valid(body)),
    why TEXT NOT NULL,
    PRIMARY KEY (life, sequence)
  ) STRICT, WITHOUT ROWID;

  CREATE TABLE hub_kiosks (
    kiosk TEXT PRIMARY KEY,
    name TEXT NOT NULL
  ) STRICT;

  CREATE TABLE dosed_apart (
    one TEXT NOT NULL REFERENCES treatments (id),
    other TEXT NOT NULL REFERENCES treatments (id),
    met_at_ms INTEGER NOT NULL,
    PRIMARY KEY (one, other)
  ) STRICT, WITHOUT ROWID;

  CREATE TABLE dosed_apart_seen (
    one TEXT NOT NULL,
    other TEXT NOT NULL,
    at_ms INTEGER NOT NULL,
    by TEXT NOT NULL,
    PRIMARY KEY (one, other),
    FOREIGN KEY (one, other) REFERENCES dosed_apart (one, other)
  ) STRICT, WITHOUT ROWID;
  ${['dosed_apart', 'dosed_apart_seen']
    .map(
      (table) => `
  CREATE TRIGGER ${table}_is_never_edited BEFORE UPDATE ON ${table}
  BEGIN SELECT RAISE(ABORT, 'an alarm is never edited'); END;
  CREATE TRIGGER ${table}_is_never_deleted BEFORE DELETE ON ${table}
  BEGIN SELECT RAISE(ABORT, 'nothing is deleted from the alarms'); END;`,
    )
    .join('')}

  DROP TRIGGER events_are_never_edited;
  CREATE TRIGGER events_are_never_edited BEFORE UPDATE OF id, clock, kind, record, animal, body ON events
  BEGIN SELECT RAISE(ABORT, 'what was told is never edited'); END;

  ALTER TABLE book_lines ADD COLUMN received INTEGER CHECK (received = 1);

  DROP INDEX one_animal_a_name;
  DROP INDEX one_animal_a_tag;
  CREATE INDEX animals_by_name ON animals (name) WHERE life = 'present';
  CREATE INDEX animals_by_tag ON animals (tag) WHERE life = 'present';
`;

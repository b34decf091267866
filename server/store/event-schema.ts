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

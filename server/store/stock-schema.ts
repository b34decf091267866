/** Packets and bottles by lot, and all that happened to them. What is on hand is the sum of it. */
export const STOCK_SCHEMA = `
  CREATE TABLE stock_lots (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL UNIQUE,
    presentation_id TEXT NOT NULL,
    lot TEXT,
    expiry_year INTEGER NOT NULL,
    expiry_month INTEGER NOT NULL CHECK (expiry_month BETWEEN 1 AND 12),
    expires_at_ms INTEGER NOT NULL,
    holds_ml REAL CHECK (holds_ml > 0)
  ) STRICT;

  CREATE TABLE stock_events (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL UNIQUE,
    lot_id TEXT NOT NULL REFERENCES stock_lots (id),
    kind TEXT NOT NULL CHECK (kind IN ('received', 'taken', 'thrown-away', 'counted')),
    pieces REAL NOT NULL CHECK (pieces >= 0),
    difference REAL CHECK ((kind = 'counted') = (difference IS NOT NULL)),
    price_minor INTEGER CHECK (price_minor >= 0),
    currency TEXT CHECK ((price_minor IS NULL) = (currency IS NULL)),
    jug_id TEXT,
    why TEXT CHECK ((kind = 'thrown-away') = (why IS NOT NULL)),
    at_ms INTEGER NOT NULL,
    by TEXT NOT NULL,
    clock_trusted INTEGER NOT NULL CHECK (clock_trusted IN (0, 1))
  ) STRICT;
  CREATE INDEX stock_events_of_a_lot ON stock_events (lot_id, sequence);
  ${['stock_lots', 'stock_events']
    .map(
      (table) => `
  CREATE TRIGGER ${table}_are_never_edited BEFORE UPDATE ON ${table}
  BEGIN SELECT RAISE(ABORT, 'what happened to the stock is never edited'); END;
  CREATE TRIGGER ${table}_are_never_deleted BEFORE DELETE ON ${table}
  BEGIN SELECT RAISE(ABORT, 'nothing is deleted from the stock'); END;`,
    )
    .join('')}

  ALTER TABLE jugs ADD COLUMN stock TEXT CHECK (stock IS NULL OR json_valid(stock));
`;

/** SQL that shows and lets write the rows of a table only while a setting names whose they are, by whatever statement. */
const onlyOf = (whose: 'farm' | 'office', table: string) => `
  ALTER TABLE ${table} ENABLE ROW LEVEL SECURITY;
  ALTER TABLE ${table} FORCE ROW LEVEL SECURITY;
  CREATE POLICY one_${whose} ON ${table}
    USING (${whose} = current_setting('byreside.${whose}', true))
    WITH CHECK (${whose} = current_setting('byreside.${whose}', true));`;

/**
 * The hub's schema, ordered and append-only: a released entry is never edited, a change is a new entry.
 *
 * Plain SQL, and every key begins with the farm: an engine that distributes rows by farm keeps each farm's on one node. The
 * rows of a farm are seen and written only while `byreside.farm` names it. What is an office's own begins with the office, and is
 * seen only while `byreside.office` names it; what it may read is the farm's word (`office_grants`). `place` counts the events of a
 * farm in the order they came, so that nothing stands before what it names.
 */
export const HUB_MIGRATIONS: readonly string[] = [
  `
  CREATE TABLE farms (
    farm TEXT NOT NULL PRIMARY KEY,
    head BIGINT NOT NULL DEFAULT 0
  );

  CREATE TABLE credentials (
    farm TEXT NOT NULL REFERENCES farms (farm),
    credential TEXT NOT NULL,
    name TEXT NOT NULL,
    key_hash TEXT NOT NULL,
    kiosk TEXT,
    invited_at TIMESTAMPTZ NOT NULL,
    revoked_at TIMESTAMPTZ,
    PRIMARY KEY (farm, credential)
  );

  CREATE TABLE lives (
    farm TEXT NOT NULL REFERENCES farms (farm),
    life TEXT NOT NULL,
    kiosk TEXT NOT NULL,
    head BIGINT NOT NULL DEFAULT 0,
    head_id TEXT,
    PRIMARY KEY (farm, life)
  );

  CREATE TABLE events (
    farm TEXT NOT NULL,
    life TEXT NOT NULL,
    sequence BIGINT NOT NULL,
    place BIGINT NOT NULL,
    id TEXT NOT NULL,
    clock TEXT NOT NULL,
    kind TEXT NOT NULL,
    body TEXT NOT NULL,
    pushed_by TEXT NOT NULL,
    pushed_at TIMESTAMPTZ NOT NULL,
    PRIMARY KEY (farm, life, sequence),
    FOREIGN KEY (farm, life) REFERENCES lives (farm, life)
  );
  ${['farms', 'credentials', 'lives', 'events'].map((table) => onlyOf('farm', table)).join('')}
  `,
  `
  ALTER TABLE farms ADD COLUMN area TEXT;
  ALTER TABLE farms ADD COLUMN time_zone TEXT;

  CREATE TABLE offices (
    office TEXT NOT NULL PRIMARY KEY,
    name TEXT NOT NULL,
    key_hash TEXT NOT NULL,
    made_at TIMESTAMPTZ NOT NULL,
    closed_at TIMESTAMPTZ
  );

  CREATE TABLE office_farms (
    office TEXT NOT NULL REFERENCES offices (office),
    farm TEXT NOT NULL,
    PRIMARY KEY (office, farm)
  );

  CREATE TABLE office_grants (
    farm TEXT NOT NULL REFERENCES farms (farm),
    office TEXT NOT NULL,
    granted_at TIMESTAMPTZ NOT NULL,
    withdrawn_at TIMESTAMPTZ,
    PRIMARY KEY (farm, office)
  );
  ${onlyOf('office', 'offices')}${onlyOf('office', 'office_farms')}${onlyOf('farm', 'office_grants')}
  `,
  // What an office asked for stands with what the farm says to it, and which of its kiosks said so.
  `
  ALTER TABLE office_grants ALTER COLUMN granted_at DROP NOT NULL;
  ALTER TABLE office_grants ADD COLUMN name TEXT;
  ALTER TABLE office_grants ADD COLUMN asked_at TIMESTAMPTZ;
  ALTER TABLE office_grants ADD COLUMN said_by TEXT;
  `,
];

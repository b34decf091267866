import type { Db } from './open-store.ts';

/** When the kiosk last did what it does for its own upkeep, one row each, and whether the disk takes writes. */
export const UPKEEP_SCHEMA = `
  CREATE TABLE upkeep (
    name TEXT PRIMARY KEY,
    at_ms INTEGER NOT NULL,
    told TEXT
  ) STRICT;
`;

/** What upkeep is remembered of: the last whole check of the file, the last backup, the last write to prove the disk. */
export type UpkeepName = 'whole-check' | 'backup' | 'probe';

/** When something was last done, milliseconds since 1970, and what there is to tell of it. */
export interface Done {
  readonly atMs: number;
  readonly told: string | null;
}

/** Remembers upkeep on disk. */
export function createUpkeepStore(db: Db) {
  const rows = db.prepare<[], Done & { name: UpkeepName }>('SELECT name, at_ms AS atMs, told FROM upkeep');
  // Every state that is told holds them: they are not read from the disk each time.
  const known = new Map<UpkeepName, Done>(rows.all().map(({ name, ...done }) => [name, done]));
  const put = db.prepare(
    `INSERT INTO upkeep (name, at_ms, told) VALUES (?, ?, ?)
     ON CONFLICT (name) DO UPDATE SET at_ms = excluded.at_ms, told = excluded.told`,
  );
  return {
    /** When it was last done; `null` where it never was. */
    last: (name: UpkeepName): Done | null => known.get(name) ?? null,
    /** Remembers that it was done. Throws when the disk refuses. */
    done(name: UpkeepName, atMs: number, told: string | null = null): void {
      put.run(name, Math.round(atMs), told);
      known.set(name, { atMs: Math.round(atMs), told });
    },
  };
}

import type { Db } from './open-store.ts';

/** The ids of intents that changed something on disk, so that none is carried out twice, even after a restart. */
export function createHandledStore(db: Db) {
  const find = db.prepare('SELECT digest FROM handled_intents WHERE id = ?').pluck();
  const add = db.prepare('INSERT INTO handled_intents (id, digest, at_ms) VALUES (?, ?, ?)');
  const changes = db.prepare('SELECT total_changes()').pluck();
  return {
    /** The digest an id was handled with, or `undefined`. */
    digestOf(id: string): string | undefined {
      return find.get(id) as string | undefined;
    },
    /** Remembers an id. Belongs in the same transaction as what the intent wrote. */
    add(id: string, digest: string, atMs: number): void {
      add.run(id, digest, atMs);
    },
    /** Rows changed since the file was opened: tells whether an intent wrote anything. */
    writes(): number {
      return changes.get() as number;
    },
  };
}

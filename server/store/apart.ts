import type { Db } from './open-store.ts';

/** Two doses of one animal that two kiosks gave without knowing of each other's, by their ids, the smaller first. */
export interface Apart {
  readonly one: string;
  readonly other: string;
  readonly metAtMs: number;
}

/** Alarms of animals dosed at two kiosks, on disk, each until somebody has read it. */
export function createApartStore(db: Db) {
  const insert = db.prepare(
    'INSERT INTO dosed_apart (one, other, met_at_ms) VALUES (?, ?, ?) ON CONFLICT DO NOTHING',
  );
  const unseen = db.prepare<[], Apart>(
    `SELECT one, other, met_at_ms AS metAtMs FROM dosed_apart AS pair WHERE NOT EXISTS
       (SELECT 1 FROM dosed_apart_seen AS seen WHERE seen.one = pair.one AND seen.other = pair.other)
     ORDER BY met_at_ms, one, other`,
  );
  const see = db.prepare(
    'INSERT INTO dosed_apart_seen (one, other, at_ms, by) VALUES (?, ?, ?, ?) ON CONFLICT DO NOTHING',
  );
  let revision = 0;
  return {
    /** Grows whenever {@link unseen} may answer otherwise. */
    revision: () => revision,
    /** Remembers a pair; one that is known is not remembered twice. */
    add(id: string, otherId: string, metAtMs: number): void {
      const [one, other] = [id, otherId].sort() as [string, string];
      insert.run(one, other, metAtMs);
      revision += 1;
    },
    /** The pairs nobody has read of yet, the oldest first. */
    unseen: (): Apart[] => unseen.all(),
    /** Remembers who read of a pair. Throws where there is none. */
    seen({ one, other }: Pick<Apart, 'one' | 'other'>, atMs: number, by: string): void {
      see.run(one, other, atMs, by);
      revision += 1;
    },
  };
}

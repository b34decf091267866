import type { Db } from './open-store.ts';

/** The names of the farm's kiosks, as the hub tells them; held in memory, since every answer of the hub brings them. */
export function createHubKioskStore(db: Db) {
  const put = db.prepare(
    'INSERT INTO hub_kiosks (kiosk, name) VALUES (?, ?) ON CONFLICT (kiosk) DO UPDATE SET name = excluded.name',
  );
  const rows = db.prepare<[], { kiosk: string; name: string }>('SELECT kiosk, name FROM hub_kiosks').all();
  const known = new Map(rows.map(({ kiosk, name }) => [kiosk, name]));
  return {
    /** What a kiosk is called; `null` where no hub told. */
    nameOf: (kiosk: string): string | null => known.get(kiosk) ?? null,
    /** The names of the others, in the order of the alphabet. */
    othersThan: (kiosk: string): string[] =>
      [...known].flatMap(([each, name]) => (each === kiosk ? [] : name)).sort((a, b) => a.localeCompare(b)),
    /** Keeps names that are new. Throws when the disk refuses. */
    keep(kiosks: Readonly<Record<string, string>>): void {
      for (const [kiosk, name] of Object.entries(kiosks)) {
        if (known.get(kiosk) === name) continue;
        put.run(kiosk, name);
        known.set(kiosk, name);
      }
    },
  };
}

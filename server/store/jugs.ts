import { z } from 'zod';
import type { Jug } from '../../core/mixing/jug.ts';
import { mgPerMl } from '../../core/quantity/strength.ts';
import { millilitres } from '../../core/quantity/volume.ts';
import type { Db } from './open-store.ts';
import { StoredJugLot, StoredWeighed } from './stored-quantity.ts';

const Row = z.strictObject({
  id: z.string(),
  number: z.int(),
  medicine_id: z.string(),
  packet_id: z.string(),
  strength_mg_per_ml: z.number(),
  strength_uncertainty: z.number(),
  volume_ml: z.number(),
  mixed_at_ms: z.int(),
  use_by_ms: z.int(),
  mixed_by: z.string(),
  clock_trusted: z.int(),
  discarded_at_ms: z.int().nullable(),
  weighed: z.string().nullable(),
  stock: z.string().nullable(),
});

/** The jugs on disk; what was drawn from each comes from the day book. */
export function createJugStore(db: Db) {
  const all = db.prepare('SELECT * FROM jugs ORDER BY number DESC');
  const insert = db.prepare(
    `INSERT INTO jugs (id, number, medicine_id, packet_id, strength_mg_per_ml, strength_uncertainty, volume_ml,
                       mixed_at_ms, use_by_ms, mixed_by, clock_trusted, discarded_at_ms, weighed, stock)
     VALUES (@id, @number, @medicineId, @packetId, @strength, @uncertainty, @volume,
             @mixedAt, @useBy, @by, @clockTrusted, NULL, @weighed, @stock)`,
  );
  const discard = db.prepare('UPDATE jugs SET discarded_at_ms = ? WHERE id = ? AND discarded_at_ms IS NULL');
  return {
    /** Every jug, newest first, as if nothing had been drawn. */
    all(): Jug[] {
      return all.all().map((row) => {
        const jug = Row.parse(row);
        return {
          id: jug.id,
          number: jug.number,
          medicineId: jug.medicine_id,
          packetId: jug.packet_id,
          strength: mgPerMl(jug.strength_mg_per_ml),
          relative: jug.strength_uncertainty,
          volume: millilitres(jug.volume_ml),
          mixedAtMs: jug.mixed_at_ms,
          useByMs: jug.use_by_ms,
          by: jug.mixed_by,
          clockTrusted: jug.clock_trusted === 1,
          discardedAtMs: jug.discarded_at_ms,
          weighed: jug.weighed === null ? null : StoredWeighed.parse(JSON.parse(jug.weighed)),
          stock: jug.stock === null ? null : StoredJugLot.parse(JSON.parse(jug.stock)),
          drawn: millilitres(0),
          drawnDoubt: millilitres(0),
          draws: 0,
        };
      });
    },
    /** Puts a jug in service. */
    add(jug: Jug): void {
      insert.run({
        id: jug.id,
        number: jug.number,
        medicineId: jug.medicineId,
        packetId: jug.packetId,
        strength: jug.strength.value,
        uncertainty: jug.relative,
        volume: jug.volume.value,
        mixedAt: jug.mixedAtMs,
        useBy: jug.useByMs,
        by: jug.by,
        clockTrusted: jug.clockTrusted ? 1 : 0,
        weighed: jug.weighed === null ? null : JSON.stringify(jug.weighed),
        stock: jug.stock === null ? null : JSON.stringify(jug.stock),
      });
    },
    /** Marks a jug as poured away; a jug poured away before keeps its first date. */
    discard(id: string, atMs: number): void {
      discard.run(atMs, id);
    },
  };
}

import { z } from 'zod';
import { type Jug, remaining } from '../../core/mixing/jug.ts';
import { redatedJug } from '../../core/mixing/redate.ts';
import { type BoardTime, DAY_MS } from '../../core/moment.ts';
import { mgPerMl } from '../../core/quantity/strength.ts';
import { millilitres } from '../../core/quantity/volume.ts';
import type { createBookHistory } from './book-history.ts';
import type { ClockCorrections } from './clock-corrections.ts';
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
  board_start: z.string().nullable(),
  board_since_ms: z.number().nullable(),
});

/** Jugs this long past their use by are on nobody's shelf (our own guard). */
const FORGOTTEN_MS = 30 * DAY_MS;
/** So many of the newest jugs are at hand whatever became of them. */
const NEWEST = 20;

/**
 * The jugs on disk, each with what the day book says was drawn from it. Those of other kiosks have numbers below zero: they
 * stand on other shelves, and are here for what was dosed from them. Each is dated by what was told of the clock since.
 */
export function createJugStore(
  db: Db,
  dayBook: Pick<ReturnType<typeof createBookHistory>, 'drawn'>,
  clock: Pick<ClockCorrections, 'toldOf'>,
) {
  const below = db.prepare('SELECT * FROM jugs WHERE number > 0 AND number < ? ORDER BY number DESC LIMIT ?');
  const byId = db.prepare('SELECT * FROM jugs WHERE id = ?');
  const kept = db.prepare(
    'SELECT * FROM jugs WHERE discarded_at_ms IS NULL AND use_by_ms >= ? AND number > 0 ORDER BY number DESC',
  );
  const latest = db.prepare('SELECT max(mixed_at_ms) FROM jugs WHERE number > 0').pluck();
  const insert = db.prepare(
    `INSERT INTO jugs (id, number, medicine_id, packet_id, strength_mg_per_ml, strength_uncertainty, volume_ml,
                       mixed_at_ms, use_by_ms, mixed_by, clock_trusted, discarded_at_ms, weighed, stock,
                       board_start, board_since_ms)
     VALUES (@id, @number, @medicineId, @packetId, @strength, @uncertainty, @volume,
             @mixedAt, @useBy, @by, @clockTrusted, NULL, @weighed, @stock, @boardStart, @boardSince)`,
  );
  function toJug(raw: unknown): Jug {
    const jug = Row.parse(raw);
    const drawn = dayBook.drawn(jug.id);
    const board = boardTimeOf(jug);
    const written: Jug = {
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
      drawn: millilitres(drawn.volumeMl),
      drawnDoubt: millilitres(drawn.doubtMl),
      draws: drawn.draws,
    };
    return redatedJug(written, board, clock.toldOf(jug.id, jug.board_start));
  }
  const discard = db.prepare('UPDATE jugs SET discarded_at_ms = ? WHERE id = ? AND discarded_at_ms IS NULL');
  return {
    /**
     * The jugs that may still be in use, and the newest whatever became of them, newest first. What is left out was poured
     * away or used up long ago, or is long past its use by.
     */
    atHand(): Jug[] {
      const newest = below.all(Number.MAX_SAFE_INTEGER, NEWEST).map(toJug);
      const oldest = newest.at(-1)?.number ?? 0;
      const from = ((latest.get() as number | null) ?? 0) - FORGOTTEN_MS;
      const older = kept
        .all(from)
        .map(toJug)
        .filter((jug) => jug.number < oldest && remaining(jug).value > 0);
      return [...newest, ...older];
    },
    /** The jugs below a number, newest first, at most so many. */
    below(number: number, most: number): Jug[] {
      return below.all(number, most).map(toJug);
    },
    /** The jug of an id, whatever became of it. */
    find(id: string): Jug | undefined {
      const row = byId.get(id);
      return row === undefined ? undefined : toJug(row);
    },
    /** Puts a jug in service, at a running time of the board where that is known. */
    add(jug: Jug, board: BoardTime | null = null): void {
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
        boardStart: board?.start ?? null,
        boardSince: board?.sinceMs ?? null,
      });
    },
    /** Marks a jug as poured away; a jug poured away before keeps its first date. */
    discard(id: string, atMs: number): void {
      discard.run(atMs, id);
    },
  };
}

function boardTimeOf({ board_start, board_since_ms }: z.infer<typeof Row>): BoardTime | null {
  if (board_start === null || board_since_ms === null) return null;
  return { start: board_start, sinceMs: board_since_ms };
}

import { redated, type Told } from '../clock/correction.ts';
import type { BoardTime } from '../moment.ts';
import type { Jug } from './jug.ts';

/**
 * A jug or bottle as it is dated today: its use by moves with the time it was put in service, and never past the month
 * printed on its lot. A bottle whose printed month is not known stays undated, since that month does not move.
 */
export function redatedJug(jug: Jug, board: BoardTime | null, told: Told): Jug {
  const written = { atMs: jug.mixedAtMs, clockTrusted: jug.clockTrusted, board };
  const dated = redated(written, told);
  if (dated.atMs === jug.mixedAtMs) return { ...jug, clockTrusted: dated.clockTrusted };
  if (jug.weighed === null && jug.stock === null) return { ...jug, clockTrusted: false };
  const moved = jug.useByMs + (dated.atMs - jug.mixedAtMs);
  const useByMs = jug.stock === null ? moved : Math.min(moved, jug.stock.expiresAtMs);
  return { ...jug, mixedAtMs: dated.atMs, useByMs, clockTrusted: dated.clockTrusted };
}

import { z } from 'zod';
import type { ScaleCheckRecord } from '../../core/checking/check-record.ts';
import { CheckedRole, SpotName } from '../../shared/check.ts';
import type { Db } from './open-store.ts';
import { storedQuantity } from './stored-quantity.ts';

const mass = storedQuantity('g');
const KnownWeight = z.strictObject({
  id: z.string(),
  amount: z.number(),
  unit: z.enum(['g', 'kg', 'lb', 'L']),
  mass,
  doubt: mass,
});

/** A check of a scale as it stands on disk: every reading, so that the verdict can be traced years later. */
const StoredCheck = z.strictObject({
  id: z.string(),
  role: CheckedRole,
  division: mass,
  weight: KnownWeight,
  second: KnownWeight.nullable(),
  readings: z.array(z.strictObject({ spot: SpotName, shown: mass })),
  points: z.array(
    z.strictObject({ spot: SpotName, known: mass, shown: mass, error: z.number(), limit: z.number() }),
  ),
  corners: z.strictObject({ spread: z.number(), limit: z.number() }).nullable(),
  rough: z.boolean(),
  verdict: z.enum(['passed', 'failed']),
  atMs: z.number(),
  by: z.string(),
  clockTrusted: z.boolean(),
}) satisfies z.ZodType<ScaleCheckRecord>;

/** The checks of the scales on disk, never edited and never deleted. */
export function createScaleCheckStore(db: Db) {
  const latest = db
    .prepare('SELECT record FROM scale_checks WHERE role = ? ORDER BY sequence DESC LIMIT 1')
    .pluck();
  const all = db.prepare('SELECT record FROM scale_checks ORDER BY sequence DESC').pluck();
  const insert = db.prepare(
    `INSERT INTO scale_checks (id, role, verdict, at_ms, by, clock_trusted, record)
     VALUES (@id, @role, @verdict, @atMs, @by, @clockTrusted, @record)`,
  );
  return {
    /** The last check of a scale, or `null`. */
    latest(role: CheckedRole): ScaleCheckRecord | null {
      const record = latest.get(role) as string | undefined;
      return record === undefined ? null : StoredCheck.parse(JSON.parse(record));
    },
    /** Every check of both scales, the newest first. */
    all(): ScaleCheckRecord[] {
      return all.all().map((record) => StoredCheck.parse(JSON.parse(record as string)));
    },
    /** Writes a finished check. */
    add(check: ScaleCheckRecord): void {
      const { id, role, verdict, atMs, by } = check;
      const clockTrusted = check.clockTrusted ? 1 : 0;
      insert.run({ id, role, verdict, atMs, by, clockTrusted, record: JSON.stringify(check) });
    },
  };
}

import { z } from 'zod';
import type { SyringeCheckRecord } from '../../core/checking/syringe-check-state.ts';
import type { Db } from './open-store.ts';
import { StoredMeasure, storedQuantity } from './stored-quantity.ts';

/** A check of a syringe as it stands on disk: every delivery, so that its figures can be traced. */
const StoredCheck = z.strictObject({
  id: z.string(),
  syringeId: z.string(),
  temperature: storedQuantity('degC'),
  division: storedQuantity('g'),
  delivered: z.array(storedQuantity('g')),
  leftOut: z.int(),
  findings: StoredMeasure.extend({
    volumes: z.array(storedQuantity('mL')),
    allowed: storedQuantity('mL'),
    verdict: z.enum(['within', 'unclear', 'outside']),
  }),
  atMs: z.number(),
  by: z.string(),
  clockTrusted: z.boolean(),
}) satisfies z.ZodType<SyringeCheckRecord>;

/** The checks of the syringes on disk, never edited and never deleted. */
export function createSyringeCheckStore(db: Db) {
  const latest = db
    .prepare(
      `SELECT record FROM syringe_checks
       WHERE sequence IN (SELECT max(sequence) FROM syringe_checks GROUP BY syringe_id) ORDER BY sequence`,
    )
    .pluck();
  const insert = db.prepare(
    `INSERT INTO syringe_checks (id, syringe_id, mark_ml, bias_ml, spread_ml, at_ms, by, clock_trusted, record)
     VALUES (@id, @syringeId, @mark, @bias, @spread, @atMs, @by, @clockTrusted, @record)`,
  );
  return {
    /** The last check of each syringe that was ever checked. */
    latest(): SyringeCheckRecord[] {
      return latest.all().map((record) => StoredCheck.parse(JSON.parse(record as string)));
    },
    /** Writes a finished check. */
    add(check: SyringeCheckRecord): void {
      const { findings } = check;
      insert.run({
        id: check.id,
        syringeId: check.syringeId,
        mark: findings.mark.value,
        bias: findings.bias.value,
        spread: findings.spread.value,
        atMs: check.atMs,
        by: check.by,
        clockTrusted: check.clockTrusted ? 1 : 0,
        record: JSON.stringify(check),
      });
    },
  };
}

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

/** Who took a check back, and when in milliseconds since 1970. */
export interface Forgotten {
  readonly atMs: number;
  readonly by: string;
}

/** The checks of the syringes on disk, never edited and never deleted. */
export function createSyringeCheckStore(db: Db) {
  const latest = db
    .prepare(
      `SELECT record FROM syringe_checks
       WHERE sequence IN (SELECT max(sequence) FROM syringe_checks GROUP BY syringe_id)
       AND id NOT IN (SELECT check_id FROM syringe_checks_forgotten) ORDER BY sequence`,
    )
    .pluck();
  const all = db.prepare<[], { record: string; at: number | null; by: string | null }>(
    `SELECT record, forgotten.at_ms AS at, forgotten.by AS by FROM syringe_checks
     LEFT JOIN syringe_checks_forgotten AS forgotten ON check_id = syringe_checks.id
     ORDER BY syringe_checks.sequence DESC`,
  );
  const forget = db.prepare('INSERT INTO syringe_checks_forgotten (check_id, at_ms, by) VALUES (?, ?, ?)');
  const insert = db.prepare(
    `INSERT INTO syringe_checks (id, syringe_id, mark_ml, bias_ml, spread_ml, at_ms, by, clock_trusted, record)
     VALUES (@id, @syringeId, @mark, @bias, @spread, @atMs, @by, @clockTrusted, @record)`,
  );
  return {
    /** The last check of each syringe that was ever checked, unless that one was forgotten. */
    latest(): SyringeCheckRecord[] {
      return latest.all().map((record) => StoredCheck.parse(JSON.parse(record as string)));
    },
    /** Every check, the newest first, with who forgot it and when. */
    all(): { readonly check: SyringeCheckRecord; readonly forgotten: Forgotten | null }[] {
      return all.all().map(({ record, at, by }) => ({
        check: StoredCheck.parse(JSON.parse(record)),
        forgotten: at === null || by === null ? null : { atMs: at, by },
      }));
    },
    /** Writes that a check counts no more. Throws where it was forgotten already. */
    forget(checkId: string, { atMs, by }: Forgotten): void {
      forget.run(checkId, atMs, by);
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

import { z } from 'zod';
import type { Approval } from '../../core/medicine/approval.ts';
import type { Db } from './open-store.ts';

const Row = z.strictObject({
  sequence: z.int(),
  regimen_id: z.string(),
  kind: z.enum(['approved', 'withdrawn']),
  direction: z.enum(['label', 'veterinarian']).nullable(),
  meat_hours: z.int().nullable(),
  milk_hours: z.int().nullable(),
  at_ms: z.int(),
  by: z.string(),
});

/** Who approved which regimen, on whose direction and when; a withdrawal is a further row. */
export function createApprovalStore(db: Db) {
  const all = db.prepare('SELECT * FROM approvals ORDER BY sequence');
  const add = db.prepare(
    `INSERT INTO approvals (regimen_id, kind, direction, meat_hours, milk_hours, at_ms, by)
     VALUES (@regimenId, @kind, @direction, @meatHours, @milkHours, @atMs, @by)`,
  );
  return {
    /** The approvals in force: the latest word on each regimen. */
    inForce(): Approval[] {
      const latest = new Map<string, Approval>();
      for (const raw of all.all()) {
        const row = Row.parse(raw);
        if (row.kind === 'withdrawn' || row.direction === null) latest.delete(row.regimen_id);
        else {
          latest.set(row.regimen_id, {
            regimenId: row.regimen_id,
            by: row.by,
            direction: row.direction,
            atMs: row.at_ms,
            meatHours: row.meat_hours,
            milkHours: row.milk_hours,
          });
        }
      }
      return [...latest.values()];
    },
    /** Writes an approval. */
    approve(approval: Approval): void {
      add.run({ ...approval, kind: 'approved' });
    },
    /** Takes an approval back. */
    withdraw(regimenId: string, by: string, atMs: number): void {
      add.run({ regimenId, kind: 'withdrawn', direction: null, meatHours: null, milkHours: null, atMs, by });
    },
  };
}

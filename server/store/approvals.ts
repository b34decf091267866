import { z } from 'zod';
import { type Approval, countIn, vetTime } from '../../core/medicine/approval.ts';
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
  meat_days: z.int().nullable(),
  milk_days: z.int().nullable(),
  target_mg_per_kg: z.number().nullable(),
  vet: z.string().nullable(),
  figures: z.string().nullable(),
});

/** The most veterinarians a farm is taken to have. */
const VETS_TOLD = 20;

/** Who approved which regimen, on whose direction and when; a withdrawal is a further row. */
export function createApprovalStore(db: Db) {
  const all = db.prepare('SELECT * FROM approvals ORDER BY sequence');
  const vets = db
    .prepare(
      'SELECT vet FROM approvals WHERE vet IS NOT NULL GROUP BY vet ORDER BY max(sequence) DESC LIMIT ?',
    )
    .pluck();
  const add = db.prepare(
    `INSERT INTO approvals (regimen_id, kind, direction, meat_hours, milk_hours, at_ms, by, meat_days, milk_days,
                            target_mg_per_kg, vet, figures)
     VALUES (@regimenId, @kind, @direction, @meatHours, @milkHours, @atMs, @by, @meatDays, @milkDays,
             @target, @vet, @figures)`,
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
            figures: row.figures,
            by: row.by,
            direction: row.direction,
            vet: row.vet,
            atMs: row.at_ms,
            targetMgPerKg: row.target_mg_per_kg,
            meat: vetTime(row.meat_hours, row.meat_days),
            milk: vetTime(row.milk_hours, row.milk_days),
          });
        }
      }
      return [...latest.values()];
    },
    /** The veterinarians named so far, the latest first. */
    vets(): string[] {
      return z.array(z.string()).parse(vets.all(VETS_TOLD));
    },
    /** Writes an approval. */
    approve({ regimenId, figures, by, direction, vet, atMs, targetMgPerKg, meat, milk }: Approval): void {
      add.run({
        regimenId,
        kind: 'approved',
        direction,
        meatHours: countIn(meat, 'hours'),
        milkHours: countIn(milk, 'hours'),
        meatDays: countIn(meat, 'days'),
        milkDays: countIn(milk, 'days'),
        target: targetMgPerKg,
        vet,
        figures,
        atMs,
        by,
      });
    },
    /** Takes an approval back. */
    withdraw(regimenId: string, by: string, atMs: number): void {
      const nothing = { direction: null, meatHours: null, milkHours: null, meatDays: null, milkDays: null };
      add.run({ regimenId, kind: 'withdrawn', ...nothing, target: null, vet: null, figures: null, atMs, by });
    },
  };
}

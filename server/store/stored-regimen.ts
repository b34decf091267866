import { z } from 'zod';
import { Figure } from '../../core/medicine/figure.ts';
import { RegimenInForce } from '../../core/medicine/in-force.ts';
import { NO_LIMITS } from '../../core/medicine/limits.ts';
import { Withdrawal } from '../../core/medicine/withdrawal.ts';

/** A regimen in rows written before a formulary knew limits, presentations and days. */
const Before = z
  .strictObject({
    id: z.string(),
    species: z.enum(['goat', 'sheep', 'cattle']),
    use: z.enum(['label', 'extra-label']),
    route: z.literal('oral drench'),
    target: Figure,
    ceiling: Figure,
    floor: Figure.nullable(),
    repeatAfterDays: Figure,
    meat: Withdrawal,
    milk: Withdrawal,
    notes: z.array(z.string()),
  })
  .transform(({ notes, ...regimen }): RegimenInForce => {
    const source = 'Written before sources of notes were kept';
    return {
      ...regimen,
      purpose: null,
      presentationIds: null,
      topUp: false,
      limits: NO_LIMITS,
      printed: [],
      notes: notes.map((text) => ({ text, evidence: 'own-guard', source })),
    };
  });

/** A regimen as it stands in a record on disk. */
export const StoredRegimen = z.union([RegimenInForce, Before]);

import { CORNERS, type ScaleCheckRecord, type SpotReading } from '../../core/checking/check-record.ts';
import { KNOWN_WEIGHTS } from '../../core/checking/known-weight.ts';
import { judgeCheck } from '../../core/checking/verdict.ts';
import { grams } from '../../core/quantity/mass.ts';
import type { ScaleRole } from '../../core/weighing/reading.ts';

/** The steps of the demo's simulated scales, in grams, and the weight each was checked with. */
const CHECKED = {
  platform: { division: 50, weightId: 'kg-20' },
  bench: { division: 1, weightId: 'g-500' },
} as const;

/** An invented check of a demo scale that passed: every reading was right. Throws where the weight is not known. */
export function demoCheck(role: ScaleRole, id: string, atMs: number): ScaleCheckRecord {
  const weight = KNOWN_WEIGHTS[role].find((known) => known.id === CHECKED[role].weightId);
  if (weight === undefined) throw new Error(`the demo's weight for the ${role} is not known`);
  const spots = ['middle', 'returned', ...(role === 'platform' ? CORNERS : [])] as const;
  const readings: SpotReading[] = spots.map((spot) => ({
    spot,
    shown: spot === 'returned' ? grams(0) : weight.mass,
  }));
  const division = grams(CHECKED[role].division);
  const run = {
    division,
    weight,
    second: null,
    readings: [{ spot: 'zero' as const, shown: grams(0) }, ...readings],
  };
  return { id, role, ...run, ...judgeCheck(run), atMs, by: 'Keeper', clockTrusted: true };
}

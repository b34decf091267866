import type { CheckPointView, ScaleCheckView, SpotName } from '../../../shared/check.ts';
import type { SyringeCheckRecordView } from '../../../shared/syringe-check.ts';

function point(spot: SpotName, knownGrams: number, shownGrams: number, limit: number): CheckPointView {
  const error = (shownGrams - knownGrams) / 50;
  return { spot, knownGrams, shownGrams, error, limit, within: Math.abs(error) <= limit };
}

/** A weight to pick. */
export const TWENTY = { id: 'kg-20', amount: 20, unit: 'kg' } as const;
/** A second one. */
export const TEN = { id: 'kg-10', amount: 10, unit: 'kg' } as const;

/** A platform's check that passed. */
export const PLATFORM_CHECK: ScaleCheckView = {
  id: 'check-1',
  role: 'platform',
  at: '2026-04-02T08:20:00Z',
  provisional: false,
  by: 'Sam',
  divisionGrams: 50,
  weight: TWENTY,
  second: TEN,
  points: [
    point('zero', 0, 0, 1),
    point('middle', 20_000, 20_000, 1.2),
    point('returned', 0, 0, 1),
    point('front-left', 20_000, 20_050, 1.2),
    point('front-right', 20_000, 20_000, 1.2),
    point('back-right', 20_000, 20_000, 1.2),
    point('back-left', 20_000, 20_022, 1.2),
    point('both', 30_000, 30_050, 2.3),
    point('down', 20_000, 20_000, 1.2),
  ],
  corners: { spread: 1, limit: 1, within: true },
  rough: false,
  verdict: 'passed',
};

/** The same with a corner that sags. */
export const FAILED_CHECK: ScaleCheckView = {
  ...PLATFORM_CHECK,
  id: 'check-2',
  at: '2026-04-14T14:00:00Z',
  second: null,
  points: [
    ...PLATFORM_CHECK.points.slice(0, 5),
    point('back-right', 20_000, 19_650, 1.2),
    point('back-left', 20_000, 20_000, 1.2),
  ],
  corners: { spread: 8, limit: 1, within: false },
  verdict: 'failed',
};

/** A syringe's check that found it a little mean. */
export const SYRINGE_CHECK: SyringeCheckRecordView = {
  id: 'syringe-check-1',
  syringeId: 'syringe-6-by-0.1',
  at: '2026-04-09T17:30:00Z',
  provisional: false,
  by: 'Sam',
  markMl: 3,
  celsius: 20,
  volumesMl: [2.97, 2.98, 2.95, 2.97, 2.99, 2.96, 2.97, 2.96, 2.98, 2.97],
  leftOut: 1,
  biasMl: -0.03,
  biasUncertaintyMl: 0.004,
  spreadMl: 0.012,
  allowedMl: 0.12,
  verdict: 'within',
};

import { type ClockCorrection, redated, type Told } from '../clock/correction.ts';
import { clearAfter } from '../dosing/withdrawal.ts';
import type { Treatment } from './treatment.ts';

/**
 * A treatment as it is dated today: where a correction of the clock bears on it, its clear times are counted from the
 * date that follows, in the zone the correction names. What was written stays in the record.
 */
export function redatedTreatment(
  treatment: Treatment,
  told: Told & { readonly ofStart: Pick<ClockCorrection, 'board' | 'isMs' | 'timeZone'> | null },
): Treatment {
  const { givenAtMs, clockTrusted, board, offer } = treatment;
  const dated = redated({ atMs: givenAtMs, clockTrusted, board }, told);
  if (dated.atMs === givenAtMs) return { ...treatment, clockTrusted: dated.clockTrusted };
  const zone = told.ofStart?.timeZone ?? 'UTC';
  return {
    ...treatment,
    givenAtMs: dated.atMs,
    clockTrusted: dated.clockTrusted,
    meat: clearAfter(offer.regimen.meat, dated.atMs, zone),
    milk: clearAfter(offer.regimen.milk, dated.atMs, zone),
  };
}

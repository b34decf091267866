import type { Regimen, Withdrawal } from './formulary.ts';

/** On whose word a regimen may be used on this farm. */
export type Direction = 'label' | 'veterinarian';

/** A person's approval of one regimen. */
export interface Approval {
  readonly regimenId: string;
  readonly by: string;
  readonly direction: Direction;
  /** Milliseconds since 1970. */
  readonly atMs: number;
  /** Hours the veterinarian gave for meat and milk; `null` leaves what the regimen ships with. */
  readonly meatHours: number | null;
  readonly milkHours: number | null;
}

/** Why an approval is refused, or `null` where it may stand: extra-label use needs a veterinarian's direction. */
export function whyNotApprovable(regimen: Regimen, direction: Direction): 'needs-veterinarian' | null {
  return regimen.use === 'extra-label' && direction !== 'veterinarian' ? 'needs-veterinarian' : null;
}

/**
 * The withdrawal in force for meat or milk: the veterinarian's hours, never shorter than what a source gives.
 *
 * What a source keeps from people altogether stays so, whatever hours were entered.
 */
export function withdrawalInForce(shipped: Withdrawal, vetHours: number | null): Withdrawal {
  if (vetHours === null || shipped.kind === 'not-for-people') return shipped;
  const hours = shipped.kind === 'hours' ? Math.max(shipped.hours, vetHours) : vetHours;
  return { kind: 'hours', hours, evidence: 'secondary', source: 'The herd’s veterinarian' };
}

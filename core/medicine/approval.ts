import { isKnown } from './figure.ts';
import type { Regimen } from './regimen.ts';

/** On whose word a regimen may be used on this farm. */
export type Direction = 'label' | 'veterinarian';

/** How long a veterinarian said to keep meat or milk back: exact hours, or days to the same time of day. */
export interface VetTime {
  readonly unit: 'hours' | 'days';
  readonly count: number;
}

/** What a veterinarian gave, from its two fields on the wire and on disk; days stand before hours. */
export function vetTime(hours: number | null, days: number | null): VetTime | null {
  if (days !== null) return { unit: 'days', count: days };
  return hours === null ? null : { unit: 'hours', count: hours };
}

/** The count of what a veterinarian gave where it is in this unit, else `null`. */
export function countIn(time: VetTime | null, unit: VetTime['unit']): number | null {
  return time?.unit === unit ? time.count : null;
}

/** A person's approval of one regimen. */
export interface Approval {
  readonly regimenId: string;
  /** What was approved, as {@link figuresOf} tells it; `null` in approvals from before this was kept. */
  readonly figures: string | null;
  /** The person who entered it. */
  readonly by: string;
  readonly direction: Direction;
  /** The veterinarian on whose word, where the farm names its veterinarians; `null` otherwise. */
  readonly vet: string | null;
  /** Milliseconds since 1970. */
  readonly atMs: number;
  /** The rate the veterinarian gave, in mg/kg, for a regimen that ships without one. */
  readonly targetMgPerKg: number | null;
  /** What the veterinarian gave for meat and milk; `null` leaves what the regimen ships with. */
  readonly meat: VetTime | null;
  readonly milk: VetTime | null;
}

/** What an approval stands for, in one line: a regimen whose figures changed since must be approved anew. */
export function figuresOf(regimen: Regimen): string {
  const { id, use, route, target, ceiling, floor, repeatAfterDays, topUp } = regimen;
  const rate = isKnown(target) ? target.value : 'unknown';
  // What lifts the stop of a second dose within a day is approved with the rest.
  const again = repeatAfterDays.value < 1 ? [`again ${repeatAfterDays.value}`] : [];
  const rest = topUp ? ['top-up'] : [];
  return [id, use, route, rate, ceiling?.value ?? 'none', floor?.value ?? 'none', ...again, ...rest].join(
    '|',
  );
}

/** Why an approval is refused. */
export type NotApprovable = 'needs-veterinarian' | 'needs-rate' | 'rate-not-needed';

/**
 * Why an approval is refused, or `null` where it may stand: extra-label use needs a veterinarian's direction, and so
 * does a rate that no source gives. A rate that a source gives is not overruled here.
 */
export function whyNotApprovable(
  regimen: Regimen,
  { direction, targetMgPerKg }: Pick<Approval, 'direction' | 'targetMgPerKg'>,
): NotApprovable | null {
  if (regimen.use === 'extra-label' && direction !== 'veterinarian') return 'needs-veterinarian';
  if (isKnown(regimen.target)) return targetMgPerKg === null ? null : 'rate-not-needed';
  if (direction !== 'veterinarian') return 'needs-veterinarian';
  return targetMgPerKg === null ? 'needs-rate' : null;
}

/** Whether an approval is one of this regimen as it stands now. */
export function approves(approval: Approval, regimen: Regimen): boolean {
  if (approval.regimenId !== regimen.id) return false;
  if (approval.figures !== null && approval.figures !== figuresOf(regimen)) return false;
  return whyNotApprovable(regimen, approval) === null;
}

import { z } from 'zod';
import type { Approval, VetTime } from './approval.ts';
import { CEILING_OF_TARGET } from './ceiling.ts';
import { Figure, isKnown } from './figure.ts';
import { REGIMEN_FIELDS, type Regimen } from './regimen.ts';
import type { Withdrawal } from './withdrawal.ts';

/** A regimen as a dose follows it on this farm: its rate and its ceiling are known. */
export const RegimenInForce = z.strictObject({ ...REGIMEN_FIELDS, target: Figure, ceiling: Figure });
/** A regimen as a dose follows it on this farm. */
export type RegimenInForce = z.infer<typeof RegimenInForce>;

const THE_VET = 'The herd’s veterinarian, entered at Shed';

/** The regimen as it stands with an approval, or `null` where nobody knows its rate. */
export function regimenInForce(regimen: Regimen, approval: Approval | null): RegimenInForce | null {
  const target = targetInForce(regimen, approval);
  if (target === null) return null;
  return {
    ...regimen,
    target,
    ceiling: regimen.ceiling ?? {
      value: CEILING_OF_TARGET * target.value,
      evidence: 'own-guard',
      source: `Set by this project as a guard, ${CEILING_OF_TARGET} times the target; no source read gives one`,
    },
    meat: withdrawalInForce(regimen.meat, approval?.meat ?? null),
    milk: withdrawalInForce(regimen.milk, approval?.milk ?? null),
  };
}

function targetInForce({ target }: Regimen, approval: Approval | null): Figure | null {
  if (isKnown(target)) return { value: target.value, evidence: target.evidence, source: target.source };
  const given = approval?.targetMgPerKg ?? null;
  return given === null ? null : { value: given, evidence: 'directed', source: THE_VET };
}

const HOURS_IN = { hours: 1, days: 24 };

/**
 * The withdrawal in force for meat or milk: the veterinarian's, never shorter than what a source gives.
 *
 * What a source keeps from people altogether stays so, whatever was entered.
 */
export function withdrawalInForce(shipped: Withdrawal, vet: VetTime | null): Withdrawal {
  if (vet === null || shipped.kind === 'not-for-people') return shipped;
  const vetHours = vet.count * HOURS_IN[vet.unit];
  if (shipped.kind === 'hours' && shipped.hours > vetHours) return shipped;
  if (shipped.kind === 'days' && shipped.days * HOURS_IN.days > vetHours) return shipped;
  const known = { evidence: 'directed', source: THE_VET } as const;
  return vet.unit === 'days' && vet.count > 0
    ? { kind: 'days', days: vet.count, ...known }
    : { kind: 'hours', hours: vet.count, ...known };
}

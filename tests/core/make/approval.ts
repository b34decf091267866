import type { Approval } from '../../../core/medicine/approval.ts';
import { hoursAgo } from './time.ts';

/** A veterinarian's direction for goats, leaving the shipped withdrawals as they are. */
export function makeApproval(over: Partial<Approval> = {}): Approval {
  return {
    regimenId: 'levamisole-goat',
    by: 'Kim',
    direction: 'veterinarian',
    atMs: hoursAgo(24),
    figures: null,
    vet: null,
    targetMgPerKg: null,
    meat: null,
    milk: null,
    ...over,
  };
}

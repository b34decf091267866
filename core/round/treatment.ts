import type { Caution } from '../dosing/cautions.ts';
import { type Clear, clearAfter } from '../dosing/withdrawal.ts';
import type { VetTime } from '../medicine/approval.ts';
import type { BoardTime } from '../moment.ts';
import { fromSteps, stepsIn } from '../quantity/round.ts';
import { millilitres, type Volume } from '../quantity/volume.ts';
import type { Offer } from './offer.ts';
import type { RoundWorld } from './state.ts';

/** How much of the dose the animal kept down. */
export type Outcome = 'whole' | 'part' | 'spat-out';

/** One dose that was given: what was shown is what stands here, and it is never edited. */
export interface Treatment {
  readonly id: string;
  /** The offer it answers; no two treatments answer one offer. */
  readonly offer: Offer;
  readonly outcome: Outcome;
  /** What of a part dose stayed in the syringe; `null` where that is not known, and for every other outcome. */
  readonly left: Volume | null;
  /** Milliseconds since 1970; provisional where the clock was not trusted. */
  readonly givenAtMs: number;
  readonly clockTrusted: boolean;
  /** The board's running time then, which dates it against others of the same start; `null` where it is not known. */
  readonly board: BoardTime | null;
  readonly by: string;
  /** Whether it was logged by its volume read back aloud, not by a press. */
  readonly readBack: boolean;
  /** Whether it was logged only after its offer had ended. */
  readonly late: boolean;
  readonly meat: Clear;
  readonly milk: Clear;
  readonly accepted: readonly Caution[];
}

/** A later statement of what really happened; it stands beside the treatment, which stays as it was. */
export interface Correction {
  readonly id: string;
  readonly treatmentId: string;
  readonly what:
    | { readonly kind: 'not-given' }
    | { readonly kind: 'wrong-animal'; readonly animalId: string }
    | { readonly kind: 'wrong-volume'; readonly volumeMl: number }
    /** What the veterinarian gave for meat and milk after the treatment; `null` says nothing of it. */
    | { readonly kind: 'vet-time'; readonly meat: VetTime | null; readonly milk: VetTime | null };
  readonly atMs: number;
  readonly by: string;
}

/**
 * What the animal kept of the dose, to the syringe's mark: all of it, or of a part what did not stay in the syringe;
 * `null` where nobody saw how much.
 */
export function swallowed({
  outcome,
  left,
  offer,
}: Pick<Treatment, 'outcome' | 'left' | 'offer'>): Volume | null {
  const { total, syringe } = offer.dose.plan;
  if (outcome === 'whole') return total;
  if (outcome !== 'part' || left === null) return null;
  const mark = syringe.graduation.value;
  return millilitres(fromSteps(stepsIn(Math.max(0, total.value - left.value), mark, 'nearest'), mark));
}

/** The record of an answered offer, with its clear times counted from now. */
export function treatmentFrom(
  id: string,
  offer: Offer,
  { outcome, left, readBack }: Pick<Treatment, 'outcome' | 'left' | 'readBack'>,
  late: boolean,
  { now, timeZone, clockTrusted, by }: Pick<RoundWorld, 'now' | 'timeZone' | 'clockTrusted' | 'by'>,
): Treatment {
  return {
    id,
    offer,
    outcome,
    left,
    givenAtMs: now.wallMs,
    clockTrusted,
    board: now.board ?? null,
    by,
    readBack,
    late,
    meat: clearAfter(offer.regimen.meat, now.wallMs, timeZone),
    milk: clearAfter(offer.regimen.milk, now.wallMs, timeZone),
    accepted: offer.accepted,
  };
}

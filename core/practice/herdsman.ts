import type { Phase } from '../round/state.ts';

/** What whoever leads the animals of a practice round sees. */
export interface PracticeYard {
  readonly phase: Phase;
  /** Whether the platform shows that nothing stands on it. */
  readonly empty: boolean;
  /** The animal led on last, while it stands there; `null` while none does. */
  readonly standing: string | null;
  /** The animals still to come, in their order. */
  readonly waiting: readonly string[];
}

/** What is done with the animals next. */
export type Herding =
  | { readonly do: 'lead-on'; readonly animalId: string }
  | { readonly do: 'walk-off' }
  | null;

/**
 * What a helper leading the animals does next: one is led on when a jug is in hand and the platform is empty, and off once
 * its dose is logged or it was skipped.
 */
export function nextHerding({ phase, empty, standing, waiting }: PracticeYard): Herding {
  if (standing !== null) {
    const skipped = phase.step === 'visit' && phase.visit.who === null && !empty;
    return phase.step === 'logged' || phase.step === 'no-jug' || skipped ? { do: 'walk-off' } : null;
  }
  const [next] = waiting;
  return phase.step === 'visit' && empty && next !== undefined ? { do: 'lead-on', animalId: next } : null;
}

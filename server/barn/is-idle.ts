import type { Memory } from './memory.ts';

/** Whether nobody is at work: no jug in hand, none being mixed, nobody on the platform, nothing being checked. */
export function isIdle({ round, mixing, deck, check, syringeCheck }: Memory): boolean {
  const steps = [mixing.step, check.step, syringeCheck.step];
  return round.phase.step === 'no-jug' && deck.onSince === null && steps.every((step) => step === 'idle');
}

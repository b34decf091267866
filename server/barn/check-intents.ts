import { scaleInCheck } from '../../core/checking/scale-check-state.ts';
import type { Intent, Refusal } from '../../shared/intent.ts';
import type { BarnContext } from './barn-context.ts';
import type { Memory } from './memory.ts';
import { runScaleCheck } from './run-check.ts';
import { runRound } from './run-round.ts';
import { runSyringeCheck } from './run-syringe-check.ts';
import { keep } from './shed-intents.ts';

type Of<T extends Intent['type']> = Extract<Intent, { type: T }>;

/** Whether a jug is being mixed on the bench; one that only waits for its label is not. */
function mixes({ mixing }: Memory): boolean {
  return mixing.step !== 'idle' && mixing.step !== 'label';
}

/** Whether the bench is taken by a check, of itself or of a syringe. */
export function benchInCheck({ check, syringeCheck }: Memory): boolean {
  const measuring = syringeCheck.step === 'cup' || syringeCheck.step === 'deliver';
  return measuring || scaleInCheck(check) === 'bench';
}

/** Begins the check of a scale; the bench must not be in use for something else. */
export function startCheck(barn: BarnContext, { role }: Of<'check-start'>): Refusal | null {
  const taken = role === 'bench' && (mixes(barn.memory) || benchInCheck(barn.memory));
  return taken ? 'bench-in-use' : runScaleCheck(barn, { type: 'start', role });
}

/** Begins the check of a syringe; the bench must not be in use for something else. */
export function startSyringeCheck(barn: BarnContext, intent: Of<'syringe-check-start'>): Refusal | null {
  const { syringeId, markMl, celsius } = intent;
  if (mixes(barn.memory) || benchInCheck(barn.memory)) return 'bench-in-use';
  return runSyringeCheck(barn, { type: 'start', syringeId, markMl, celsius });
}

/** Keeps how often the platform is checked, and whether a dose stops without it; doses in hand are judged anew. */
export function setCheckRule(barn: BarnContext, { everyDays, stops }: Of<'set-check-rule'>): null {
  keep(barn, 'scaleCheckDays', everyDays);
  keep(barn, 'scaleCheckStops', stops);
  runRound(barn, { type: 'world-changed', what: 'rules' });
  return null;
}

import { herdMean } from '../../core/worms/herd-mean.ts';
import type { Memory } from '../barn/memory.ts';

/** The herd's mean eggs per gram: what a person entered, else its newest batch of counts; `null` where neither is known. */
export function eggsNow(
  { settings, eggCounts }: Pick<Memory, 'settings' | 'eggCounts'>,
  wallMs: number,
): number | null {
  return settings.eggsPerGram ?? herdMean(eggCounts, wallMs)?.eggsPerGram ?? null;
}

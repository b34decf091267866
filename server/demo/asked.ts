import { grams } from '../../core/quantity/mass.ts';
import type { Memory } from '../barn/memory.ts';
import { pourView } from '../view/pour-view.ts';

/** What somebody at the demo's scales would do now to go on with the jug or the round. */
export type AskedInWork =
  | { readonly do: 'place-jug' }
  | { readonly do: 'pour'; readonly grams: number }
  | { readonly do: 'add-powder' }
  | { readonly do: 'bring'; readonly animalId: string }
  | { readonly do: 'walk-off' }
  | null;

/** What the jug being mixed, or else the round, waits for on the scales; `null` where it waits for a tap. */
export function askedInWork(memory: Memory): AskedInWork {
  const { mixing, round, deck } = memory;
  switch (mixing.step) {
    case 'place':
      return { do: 'place-jug' };
    case 'pour': {
      const { nowGrams, targetGrams } = pourView(mixing, memory);
      const missing = nowGrams === null ? 0 : targetGrams - nowGrams;
      return missing > 0 ? { do: 'pour', grams: missing } : null;
    }
    case 'powder':
      return { do: 'add-powder' };
    case 'idle':
      break;
    default:
      return null;
  }
  const { phase } = round;
  const nobodys = phase.step === 'visit' && phase.visit.who === null;
  if (deck.verdict !== 'empty') return nobodys || phase.step === 'logged' ? { do: 'walk-off' } : null;
  if (!nobodys) return null;
  const next = memory.animals.find(({ id, tag }) => tag !== null && !isDosed(id, memory));
  return next === undefined ? null : { do: 'bring', animalId: next.id };
}

function isDosed(animalId: string, { recent }: Memory): boolean {
  return recent.some(({ treatment }) => treatment.offer.animal.id === animalId);
}

/** How fast the demo's hand pours when it is asked to pour to the mark. */
export const ASKED_POUR = grams(120);

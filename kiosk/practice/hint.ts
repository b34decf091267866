import type { KioskState } from '../../shared/state.ts';
import type { Words } from '../words/words.ts';

/** What somebody who practises may do now. */
export type Hint = keyof Words['practice']['say'];

/** After so many doses of a practice the hand has seen it all. */
const DOSES_OF_A_ROUND = 2;

/** What to do next in a practice round; `null` where the screen says it all. */
export function hintOf({ round, dayBook }: Pick<KioskState, 'round' | 'dayBook'>): Hint | null {
  switch (round.step) {
    case 'no-jug':
      return 'take';
    case 'prove-jug':
      return 'prove';
    case 'visit':
      return 'wait';
    case 'which-animal':
      return 'who';
    case 'cautions':
      return 'caution';
    case 'offered':
      return 'give';
    case 'logged':
      return dayBook.length < DOSES_OF_A_ROUND ? 'logged' : 'done';
    default:
      return null;
  }
}

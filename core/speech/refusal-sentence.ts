import { showNumber } from '../quantity/show.ts';
import { unreachable } from '../unreachable.ts';
import type { SpokenRefusal } from './interpret.ts';

/** A refusal in words, to be said and shown: what was understood, and what to do instead. */
export function refusalSentence(refusal: SpokenRefusal): string {
  switch (refusal.why) {
    case 'wrong-volume':
      return `I heard ${showNumber(refusal.saidMl, 3)}. The dose is ${showNumber(refusal.shownMl, 3)}. Nothing is logged: look at the syringe.`;
    case 'nothing-offered':
      return 'There is no dose on offer. Nothing is logged.';
    case 'no-animal':
      return 'No animal is named yet. Say its tag first.';
    case 'undo-over':
      return 'The time to take it back is over. Correct it in the day book.';
    case 'moved-on':
      return 'Something changed while you spoke. Look, and say it again.';
    case 'not-by-voice':
      return 'A dose is not logged by voice here. Hold the button.';
    default:
      return unreachable(refusal);
  }
}

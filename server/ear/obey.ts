import type { SpokenWish } from '../../core/speech/interpret.ts';
import { unreachable } from '../../core/unreachable.ts';
import type { EarView, PageWish } from '../../shared/ear.ts';
import type { Intent } from '../../shared/intent.ts';
import type { Barn } from '../barn/barn.ts';
import { onBench } from '../barn/run-round.ts';
import { isSaidAloud, type Speaker } from '../speech/speaker.ts';
import { heardWords } from './heard-words.ts';

/** What came of a wish: as it is shown. */
export type Outcome = Pick<NonNullable<EarView['heard']>, 'outcome' | 'sentence'>;

/** Who can do what was asked. */
export interface Servants {
  readonly barn: Barn;
  readonly speaker: Pick<Speaker, 'say' | 'sayAgain'>;
  /** Tells the page that is listened to; whether there is one. */
  readonly tellPage: (wish: PageWish) => boolean;
}

/** An intent that need not name its id. */
type Unnamed<I = Intent> = I extends Intent ? Omit<I, 'id'> : never;

const DONE: Outcome = { outcome: 'done', sentence: null };
const NOT_SCORED = { eyelid: null, body: null, soiling: null, jaw: null, coat: null };

/** Does what was asked aloud as a tap would, or tells, aloud too, why not. */
export function obey(wish: SpokenWish, servants: Servants): Outcome {
  const { barn, speaker, tellPage } = servants;
  const { language } = barn.context.memory.settings;
  switch (wish.type) {
    case 'wake':
      return DONE;
    case 'screen':
    case 'undo':
      return tellPage(wish) ? DONE : refused(heardWords('no-screen', language));
    case 'say-again':
      if (speaker.sayAgain()) return DONE;
      speaker.say({ what: 'not-done', why: 'nothing-said' });
      return refused(heardWords('nothing-to-say-again', language));
    case 'pick-animal':
      return pick(wish, servants);
    case 'take-jug': {
      const taken = ask(wish, servants);
      // Standing on the bench it is proved by its weight at once, as its number alone never proves it.
      const there = typeof onBench(barn.context) === 'object';
      return taken.outcome === 'done' && there
        ? ask({ type: 'prove-on-bench', jugId: wish.jugId }, servants)
        : taken;
    }
    case 'score': {
      const { sign, step } = wish.score;
      const scored = { ...NOT_SCORED, [sign]: step } as Extract<Intent, { type: 'score' }>['scored'];
      return ask({ type: 'score', animalId: wish.animalId, scored }, servants);
    }
    case 'not-given':
      return ask({ type: 'correct', treatmentId: wish.treatmentId, what: { kind: 'not-given' } }, servants);
    case 'prove-on-bench':
    case 'skip':
    case 'next':
    case 'give':
      return ask(wish, servants);
    default:
      return unreachable(wish);
  }
}

/** Whoever was taken is said and shown, so that a mishearing is noticed before anything follows from it. */
function pick(wish: Extract<SpokenWish, { type: 'pick-animal' }>, servants: Servants): Outcome {
  const { barn, speaker } = servants;
  const answer = ask(wish, servants);
  const animal = barn.context.memory.animals.find(({ id }) => id === wish.animalId);
  if (answer.outcome !== 'done' || animal === undefined) return answer;
  const number = animal.visualTags[0] ?? animal.tag?.slice(-4) ?? null;
  const other = number === animal.name ? null : number;
  speaker.say({ what: 'called', name: animal.name, number: other });
  return { outcome: 'done', sentence: other === null ? animal.name : `${animal.name} · ${other}` };
}

function ask(intent: Unnamed, { barn, speaker }: Servants): Outcome {
  const answer = barn.handle({ ...intent, id: barn.context.newId() } as Intent, 'voice');
  if (answer.ok) return DONE;
  // Some refusals are said for whoever asked.
  if (!isSaidAloud(answer.code)) speaker.say({ what: 'not-done', why: 'other' });
  return refused(answer.message);
}

function refused(sentence: string): Outcome {
  return { outcome: 'refused', sentence };
}

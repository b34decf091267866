import type { SkipReason } from '../round/state.ts';
import { unreachable } from '../unreachable.ts';
import type { Command, SpokenScore, SpokenScreen } from './command.ts';
import { type MayBeHeard, mayBeHeard, type Scene } from './may-be-heard.ts';
import { readBackVolume } from './read-back.ts';

/** What a phrase asks for, in the fields of the intent it becomes; the first four are no intents. */
export type SpokenWish =
  | { readonly type: 'screen'; readonly screen: SpokenScreen }
  | { readonly type: 'say-again' }
  | { readonly type: 'wake' }
  | { readonly type: 'undo'; readonly treatmentId: string }
  | { readonly type: 'pick-animal'; readonly animalId: string }
  | { readonly type: 'take-jug'; readonly jugId: string }
  | { readonly type: 'prove-on-bench'; readonly jugId: string }
  | { readonly type: 'not-given'; readonly treatmentId: string }
  | { readonly type: 'score'; readonly animalId: string; readonly score: SpokenScore }
  | { readonly type: 'skip'; readonly reason: SkipReason }
  | { readonly type: 'next' }
  | { readonly type: 'give'; readonly offerId: string; readonly outcome: 'whole' };

/** Why what was said is not done. */
export type SpokenRefusal =
  | { readonly why: 'wrong-volume'; readonly saidMl: number; readonly shownMl: number }
  | { readonly why: 'nothing-offered' }
  | { readonly why: 'no-animal' }
  | { readonly why: 'undo-over' }
  /** It could be said when the speech began, and no longer when it ended. */
  | { readonly why: 'moved-on' }
  | { readonly why: 'not-by-voice' };

/** What becomes of a phrase. */
export type Interpretation =
  | { readonly ok: true; readonly wish: SpokenWish }
  | { readonly ok: false; readonly refusal: SpokenRefusal };

/** The phrase these words are, or `null` where they are none of those that may be heard. */
export function commandFrom(words: readonly string[], may: MayBeHeard): Command | null {
  const plain = words.map((word) => (word === 'oh' ? 'zero' : word));
  const volumeMl = may.given === null ? null : readBackVolume(plain);
  if (volumeMl !== null) return { kind: 'given', volumeMl };
  const said = plain.join(' ');
  return may.phrases.find(({ words: its }) => its.join(' ') === said)?.command ?? null;
}

/**
 * Whether more words could still make another phrase of these: "tag four one" of "tag four one seven".
 *
 * The ear then waits longer before it takes a silence for the end.
 */
export function canGoOn(words: readonly string[], may: MayBeHeard): boolean {
  const plain = words.map((word) => (word === 'oh' ? 'zero' : word));
  return may.phrases.some(
    ({ words: its }) => its.length > plain.length && plain.every((word, at) => word === its[at]),
  );
}

/** Volumes closer than this, in mL, are the same mark: less than any syringe is marked in. */
const SAME_MARK_ML = 1e-6;

/**
 * Holds a command against the state as it is when the speech ended, which may have moved on since it began.
 *
 * A dose is given by voice only where the volume read back is the volume on the screen: the sum of its draws.
 */
export function interpret(command: Command, scene: Scene): Interpretation {
  const { phase, now } = scene;
  switch (command.kind) {
    case 'screen':
      return yes({ type: 'screen', screen: command.screen });
    case 'say-again':
      return yes({ type: 'say-again' });
    case 'wake':
      return command.also === null ? yes({ type: 'wake' }) : interpret(command.also, scene);
    case 'animal':
      return stillMay(command, scene, { type: 'pick-animal', animalId: command.animalId });
    case 'take-jug':
      return stillMay(command, scene, { type: 'take-jug', jugId: command.jugId });
    case 'jug-on-bench':
      if (phase.step !== 'prove-jug') return no({ why: 'moved-on' });
      return yes({ type: 'prove-on-bench', jugId: phase.jugId });
    case 'skip':
      return stillMay(command, scene, { type: 'skip', reason: command.reason });
    case 'next':
      return stillMay(command, scene, { type: 'next' });
    case 'score': {
      const animalId = animalNow(scene);
      if (animalId === null) return no({ why: 'no-animal' });
      return yes({ type: 'score', animalId, score: command.score });
    }
    case 'undo':
      if (phase.step !== 'logged' || now.uptimeMs >= phase.undoUntil) return no({ why: 'undo-over' });
      return yes({ type: 'undo', treatmentId: phase.treatment.id });
    case 'not-given':
      if (phase.step !== 'logged' || now.uptimeMs >= phase.undoUntil) return no({ why: 'undo-over' });
      return stillMay(command, scene, { type: 'not-given', treatmentId: phase.treatment.id });
    case 'given': {
      if (!scene.mayGive) return no({ why: 'not-by-voice' });
      if (phase.step !== 'offered') return no({ why: 'nothing-offered' });
      const shownMl = phase.offer.dose.plan.total.value;
      if (Math.abs(command.volumeMl - shownMl) > SAME_MARK_ML) {
        return no({ why: 'wrong-volume', saidMl: command.volumeMl, shownMl });
      }
      return yes({ type: 'give', offerId: phase.offer.id, outcome: 'whole' });
    }
    default:
      return unreachable(command);
  }
}

/** An animal called while no dose was on offer must not end one that came meanwhile. */
function stillMay(command: Command, scene: Scene, wish: SpokenWish): Interpretation {
  const same = JSON.stringify(command);
  const may = mayBeHeard(scene).phrases.some((phrase) => JSON.stringify(phrase.command) === same);
  return may ? yes(wish) : no({ why: 'moved-on' });
}

function animalNow({ phase }: Scene): string | null {
  switch (phase.step) {
    case 'visit':
    case 'which-animal':
    case 'cautions':
      return phase.visit.who?.animalId ?? null;
    case 'offered':
      return phase.offer.animal.id;
    case 'logging':
      return phase.offer.animal.id;
    case 'logged':
      return phase.treatment.offer.animal.id;
    case 'no-jug':
    case 'prove-jug':
      return null;
    default:
      return unreachable(phase);
  }
}

function yes(wish: SpokenWish): Interpretation {
  return { ok: true, wish };
}

function no(refusal: SpokenRefusal): Interpretation {
  return { ok: false, refusal };
}

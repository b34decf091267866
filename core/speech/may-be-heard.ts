import { type HerdAnimal, isPresent } from '../herd/herd-animal.ts';
import { type Jug, mayBeInUse } from '../mixing/jug.ts';
import type { Moment } from '../moment.ts';
import { decimalsOf } from '../quantity/round.ts';
import type { Phase } from '../round/state.ts';
import { type AnimalPhrases, animalPhrases, type LeftOut } from './animal-phrases.ts';
import type { Phrase } from './command.ts';
import { ALWAYS, NEXT, NOT_GIVEN, ON_BENCH, SCORES, SKIPS, UNDO } from './fixed-phrases.ts';
import { digitByDigit } from './read-back.ts';

/** What decides what may be heard now. */
export interface Scene {
  readonly phase: Phase;
  readonly animals: readonly HerdAnimal[];
  readonly jugs: readonly Jug[];
  readonly now: Moment;
  readonly clockTrusted: boolean;
  /** Whether a dose may be logged by its read-back. */
  readonly mayGive: boolean;
  /** Whether the kiosk is heard itself: only then does a keeper notice that it took one animal for another. */
  readonly aloud: boolean;
  /** The treatment of which it was asked aloud what happened; `null` where nothing was asked. */
  readonly asked: string | null;
}

/** All that may be heard now. */
export interface MayBeHeard {
  readonly phrases: readonly Phrase[];
  /**
   * Whether a dose may be read back: "given", then *any* volume below 100 mL with so many decimals, then "mils". It never
   * depends on the dose shown, so that a wrong one is heard as what it is.
   */
  readonly given: { readonly decimals: 1 | 2 } | null;
  /** Numbers and names that cannot be called. */
  readonly leftOut: readonly LeftOut[];
}

/**
 * What may be heard where the round stands.
 *
 * Held presses stay presses: no caution is accepted, no jug proved but by its weight, and nothing corrected by voice
 * but a dose that was just logged and never given. Another animal is not called while a dose is on offer, since a
 * mishearing would end the offer.
 */
export function mayBeHeard(scene: Scene): MayBeHeard {
  const { phase } = scene;
  const none = { phrases: ALWAYS, given: null, leftOut: [] };
  switch (phase.step) {
    case 'no-jug':
      return { ...none, phrases: [...ALWAYS, ...jugPhrases(scene)] };
    case 'prove-jug':
      return { ...none, phrases: [...ALWAYS, ON_BENCH] };
    case 'logging':
      return none;
    case 'visit':
    case 'which-animal': {
      const { phrases, leftOut } = callsOf(scene, phase.step === 'visit' ? null : phase.between);
      const scores = scoresFor(scene, phase.visit.who?.animalId);
      return { phrases: [...ALWAYS, ...phrases, ...SKIPS, ...scores], given: null, leftOut };
    }
    case 'cautions':
      return { ...none, phrases: [...ALWAYS, ...SKIPS, ...scoresFor(scene, phase.visit.who?.animalId)] };
    case 'offered': {
      const scores = scoresFor(scene, phase.offer.animal.id);
      const { graduation } = phase.offer.dose.plan.syringe;
      const decimals = decimalsOf(graduation.value) >= 2 ? 2 : 1;
      return {
        ...none,
        phrases: [...ALWAYS, ...SKIPS, ...scores],
        given: scene.mayGive ? { decimals } : null,
      };
    }
    case 'logged': {
      const { id } = phase.treatment;
      const undo =
        scene.now.uptimeMs < phase.undoUntil ? [UNDO, ...(scene.asked === id ? [NOT_GIVEN] : [])] : [];
      const scores = scoresFor(scene, phase.treatment.offer.animal.id);
      // The next animal may be called at once.
      const { phrases, leftOut } = callsOf(scene, null);
      return { phrases: [...ALWAYS, NEXT, ...undo, ...scores, ...phrases], given: null, leftOut };
    }
  }
}

/** How the animals on the farm are called, or those of them that are in question. */
function callsOf({ animals, aloud }: Scene, between: readonly string[] | null): AnimalPhrases {
  const called = animals.filter((animal) => between === null || between.includes(animal.id));
  return animalPhrases(aloud ? called.filter(isPresent) : []);
}

function jugPhrases({ jugs, now, clockTrusted }: Scene): Phrase[] {
  return jugs
    .filter((jug) => mayBeInUse(jug, now.wallMs, clockTrusted))
    .map((jug) => ({
      words: ['take', 'jug', 'number', ...digitByDigit(String(jug.number))],
      command: { kind: 'take-jug', jugId: jug.id },
    }));
}

function scoresFor({ animals }: Scene, animalId: string | undefined): Phrase[] {
  const species = animals.find(({ id }) => id === animalId)?.species;
  if (species === undefined) return [];
  return SCORES.filter(({ command }) => {
    if (command.kind !== 'score') return false;
    if (command.score.sign === 'eyelid') return species !== 'cattle';
    return command.score.sign !== 'coat' || species === 'goat';
  });
}

import { mayBeInUse } from '../../core/mixing/jug.ts';
import type { Scene } from '../../core/speech/may-be-heard.ts';
import type { BarnContext } from '../barn/barn-context.ts';

/** What decides what may be heard now, by the barn as it stands. */
export function hearingScene(
  { memory, clock }: BarnContext,
  { aloud, asked, mayGive }: Pick<Scene, 'aloud' | 'asked' | 'mayGive'>,
): Scene {
  return {
    phase: memory.round.phase,
    animals: memory.animals,
    jugs: memory.jugs,
    now: clock.now(),
    clockTrusted: clock.isTrusted(),
    mayGive,
    aloud,
    asked,
  };
}

/**
 * What of a scene decides the phrases, and nothing that changes with each weight: while it stays the same, so do they.
 */
export function phrasesHangOn(scene: Scene): readonly unknown[] {
  const { phase, animals, jugs, now, clockTrusted, aloud, asked } = scene;
  const undo = phase.step === 'logged' && now.uptimeMs < phase.undoUntil;
  const who = 'visit' in phase ? (phase.visit?.who?.animalId ?? null) : null;
  const between = phase.step === 'which-animal' ? phase.between.join() : null;
  const syringe = phase.step === 'offered' ? phase.offer.dose.plan.syringe.id : null;
  const jugsInUse =
    phase.step === 'no-jug'
      ? jugs
          .filter((jug) => mayBeInUse(jug, now.wallMs, clockTrusted))
          .map(({ id }) => id)
          .join()
      : null;
  return [phase.step, who, between, syringe, jugsInUse, undo, asked, aloud, animals, jugs];
}

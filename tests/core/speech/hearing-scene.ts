import { newcomer } from '../../../core/herd/herd-animal.ts';
import type { Scene } from '../../../core/speech/may-be-heard.ts';
import { makeHerdAnimal } from '../make/herd-animal.ts';
import { makeJug } from '../make/jug.ts';
import { HERD } from '../make/round.ts';
import { roundAt, type StateName } from '../make/round-states.ts';
import { NINE_OCLOCK, UP } from '../make/time.ts';

/** What may be looked at where the round stands: the herd of its tests and a doe with a visual tag. */
export function sceneAt(state: StateName, over: Partial<Scene> = {}): Scene {
  return {
    phase: roundAt(state).phase,
    animals: [
      ...HERD.map(newcomer),
      makeHerdAnimal({ id: 'ella', name: 'Ella', tag: null, visualTags: ['417'] }),
    ],
    jugs: [makeJug()],
    now: { uptimeMs: UP + 100, wallMs: NINE_OCLOCK },
    clockTrusted: true,
    mayGive: true,
    aloud: true,
    asked: null,
    ...over,
  };
}

/** All sentences that may be heard, apart from a dose read back. */
export function sentences(phrases: readonly { readonly words: readonly string[] }[]): string[] {
  return phrases.map(({ words }) => words.join(' '));
}

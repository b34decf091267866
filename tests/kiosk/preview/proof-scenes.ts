import type { JugProofView } from '../../../shared/round.ts';
import { BASE, JUG, RIVAL } from './base-state.ts';
import type { Scene } from './scene.ts';

function proof(
  name: string,
  rival: boolean,
  bench: Partial<JugProofView>,
  taps: readonly string[] = [],
  animal: string | null = null,
): Scene {
  const nothing = {
    verdict: 'nothing-there',
    nowGrams: 0,
    expectedGrams: 929,
    otherNumber: null,
  } satisfies JugProofView;
  return {
    name,
    place: 'platform',
    state: {
      ...BASE,
      jugs: rival ? [JUG, RIVAL] : [JUG],
      round: {
        step: 'prove-jug',
        jugId: 'j7',
        rival,
        bench: { ...nothing, ...bench },
        animal,
        unanswered: [],
      },
    },
    taps,
  };
}

/** The proof that the jug in hand is the one that was named. */
export const PROOF_SCENES: readonly Scene[] = [
  proof('prove-jug', false, {}),
  proof('prove-jug-rival', true, {}, ['hold:prove-jug-yes']),
  proof('prove-jug-fits', true, { verdict: 'fits', nowGrams: 931 }),
  proof('prove-jug-otherwise', false, { verdict: 'weighs-otherwise', nowGrams: 774 }),
  proof('prove-jug-another', true, { verdict: 'weighs-as-another', nowGrams: 2171, otherNumber: 8 }),
  proof('prove-jug-fits-two', true, { verdict: 'fits-two', nowGrams: 931, otherNumber: 8 }),
  proof('prove-jug-extra', true, {}, [], 'a1'),
  proof('prove-jug-unweighed', true, { verdict: 'weight-unknown', expectedGrams: null }),
];

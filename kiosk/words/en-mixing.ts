import type { JugProofView } from '../../shared/round.ts';

/** English: how a jug is chosen, weighed, filled and known again. */
export const enMixing = {
  jug: (letter: string) => `Jug ${letter}`,
  proof: {
    fits: (now: string, should: string) => `On the bench: ${now}. Should be ${should}.`,
    'weighs-otherwise': (now: string, should: string) => `${now} on the bench, ${should} expected`,
    'weighs-as-another': (now: string, should: string) => `${now} on the bench, ${should} expected`,
    'fits-two': (now: string) => `${now}: another jug would weigh the same`,
    'nothing-there': () => 'Set it on the bench: its weight proves it',
    'bench-moving': () => 'On the bench: let it rest…',
    'bench-not-ready': () => '',
    'scale-tared': () => 'The bench scale is tared: set it to gross',
    'weight-unknown': () => '',
  } satisfies Record<JugProofView['verdict'], (now: string, should: string) => string>,
  proofOther: (number: number) => `That weighs as jug ${number}`,
  proofNot: (number: number) => `That is not jug ${number}`,
  weighed: (number: number) => `Weighed: it is jug ${number}`,
};

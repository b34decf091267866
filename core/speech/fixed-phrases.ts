import { BODY_CONDITIONS, EYELIDS, SOILINGS } from '../worms/scores.ts';
import type { Phrase, SpokenScreen } from './command.ts';
import { volumeWords } from './read-back.ts';

/**
 * Phrases chosen for what they do not sound like: each ends in a word hardly said in a barn after its first, or is
 * long enough to be told from talk. One-word phrases were tried and are forced onto by any cough.
 */
const SCREEN_WORDS: Readonly<Record<SpokenScreen, string>> = {
  home: 'home screen',
  platform: 'platform screen',
  jug: 'mixing screen',
  'day-book': 'day book screen',
  board: 'board screen',
  animals: 'animals screen',
  shed: 'shed screen',
};

function phrase(text: string, command: Phrase['command']): Phrase {
  return { words: text.split(' '), command };
}

/** Heard wherever the kiosk stands. */
export const ALWAYS: readonly Phrase[] = [
  ...Object.entries(SCREEN_WORDS).map(([screen, text]) =>
    phrase(text, { kind: 'screen', screen: screen as SpokenScreen }),
  ),
  phrase('kiosk say again', { kind: 'say-again' }),
];

/** Heard where an animal may be left undosed. */
export const SKIPS: readonly Phrase[] = [
  phrase('skip not needed', { kind: 'skip', reason: 'not-needed' }),
  phrase('skip sick animal', { kind: 'skip', reason: 'sick' }),
  phrase('skip would not take it', { kind: 'skip', reason: 'refused' }),
  phrase('skip until later', { kind: 'skip', reason: 'later' }),
  phrase('skip had to stop', { kind: 'skip', reason: 'stopped' }),
];

/** Heard when a dose is logged. */
export const NEXT: Phrase = phrase('next animal', { kind: 'next' });

/** Heard while a dose may be taken back: it opens the question what happened. */
export const UNDO: Phrase = phrase('undo last dose', { kind: 'undo' });

/** Heard once the question what happened was asked aloud. */
export const NOT_GIVEN: Phrase = phrase('dose not given', { kind: 'not-given' });

/** Heard while the jug in hand is to be proved. */
export const ON_BENCH: Phrase = phrase('check jug weight', { kind: 'jug-on-bench' });

/** Heard when the animal is known. An eyelid is scored in sheep and goats, a coat in goats. */
export const SCORES: readonly Phrase[] = [
  ...EYELIDS.map((step) => scored('eyelid score', step, { sign: 'eyelid', step })),
  ...BODY_CONDITIONS.map((step) => scored('body score', step, { sign: 'body', step })),
  ...SOILINGS.map((step) => scored('tail score', step, { sign: 'soiling', step })),
  phrase('jaw is swollen', { kind: 'score', score: { sign: 'jaw', step: 'swollen' } }),
  phrase('jaw not swollen', { kind: 'score', score: { sign: 'jaw', step: 'none' } }),
  phrase('coat score rough', { kind: 'score', score: { sign: 'coat', step: 'rough' } }),
  phrase('coat score smooth', { kind: 'score', score: { sign: 'coat', step: 'smooth' } }),
];

function scored(
  carrier: string,
  step: number,
  score: Extract<Phrase['command'], { kind: 'score' }>['score'],
): Phrase {
  return {
    words: [...carrier.split(' '), ...volumeWords(step)],
    command: { kind: 'score', score },
  };
}

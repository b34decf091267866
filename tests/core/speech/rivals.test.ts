import { expect, test } from 'vitest';
import {
  ALWAYS,
  NEXT,
  NOT_GIVEN,
  ON_BENCH,
  SCORES,
  SKIPS,
  UNDO,
} from '../../../core/speech/fixed-phrases.ts';
import { rivalGrammar } from '../../../core/speech/rivals.ts';
import { WAKE_WORDS } from '../../../core/speech/wake.ts';

test('no everyday word is a word of a phrase, and each is said once', () => {
  const { jsgf, pronunciations } = rivalGrammar((word) => [word.toUpperCase()]);
  const phrases = [...ALWAYS, ...SKIPS, ...SCORES, NEXT, UNDO, NOT_GIVEN, ON_BENCH].flatMap(
    ({ words }) => words,
  );
  for (const word of [...phrases, ...WAKE_WORDS, 'given', 'point', 'nine', 'oh', 'tag', 'animal']) {
    expect(pronunciations.has(word), word).toBe(false);
  }
  expect(pronunciations.size).toBeGreaterThan(400);
  expect(jsgf).toContain('public <rivals> = (a | about |');
});

test('words that no dictionary holds are left out', () => {
  expect([
    ...rivalGrammar((word) => (word === 'goat' || word === 'gate' ? ['G'] : [])).pronunciations.keys(),
  ]).toEqual(['gate']);
});

import { expect, test } from 'vitest';
import { SPOKEN_LANGUAGES } from '../../../core/speech/language.ts';
import { heardWords, refusedWords } from '../../../server/ear/heard-words.ts';

test('a wrong volume is refused in words that hold both volumes', () => {
  const refusal = { why: 'wrong-volume', saidMl: 3.2, shownMl: 33 } as const;
  expect(refusedWords(refusal, 'en')).toBe(
    'I heard 3.2. The dose is 33. Nothing is logged: look at the syringe.',
  );
  for (const language of SPOKEN_LANGUAGES)
    expect(refusedWords(refusal, language)).toMatch(/\b3\.2\b.*\b33\b/);
});

test('each language has a sentence of its own', () => {
  expect(refusedWords({ why: 'no-animal' }, 'es')).toBe(heardWords('no-animal', 'es'));
  expect(heardWords('no-animal', 'es')).not.toBe(heardWords('no-animal', 'en'));
});

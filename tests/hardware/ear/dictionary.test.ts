import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { OTHER_ACCENTS } from '../../../core/speech/accents.ts';
import {
  ALWAYS,
  NEXT,
  NOT_GIVEN,
  ON_BENCH,
  SCORES,
  SKIPS,
  UNDO,
} from '../../../core/speech/fixed-phrases.ts';
import { DIGIT_WORDS, READ_BACK, TEEN_WORDS, TENS_WORDS } from '../../../core/speech/read-back.ts';
import { WAKE_WORDS } from '../../../core/speech/wake.ts';
import { openDictionary } from '../../../hardware/ear/dictionary.ts';
import { earPresent } from './ear-rig.ts';

const folder = mkdtempSync(join(tmpdir(), 'byreside-dictionary-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('the dictionary', () => {
  test('gives all ways to say a word, and none of a longer one', () => {
    const path = join(folder, 'small.dict');
    writeFileSync(
      path,
      "a AH\ngive G IH V\ngiven G IH V AH N\ngiven(2) G IH V IH N\ngiven's G IH V AH N Z\nzoo Z UW",
    );
    const look = openDictionary(path);
    expect(look('given')).toEqual(['G IH V AH N', 'G IH V IH N']);
    expect(look('give')).toEqual(['G IH V']);
    expect(look('a')).toEqual(['AH']);
    expect(look('zoo')).toEqual(['Z UW']);
    expect(look('giv')).toEqual([]);
    expect(look('given')).toBe(look('given'));
  });

  test('a missing file is an error', () => {
    expect(() => openDictionary(join(folder, 'none'))).toThrow('ENOENT');
  });

  test.skipIf(!earPresent)('the model holds every word of every fixed phrase and number', () => {
    const look = openDictionary();
    const phrases = [...ALWAYS, ...SKIPS, ...SCORES, NEXT, UNDO, NOT_GIVEN, ON_BENCH].flatMap(
      ({ words }) => words,
    );
    const words = [
      ...phrases,
      ...WAKE_WORDS,
      ...Object.values(READ_BACK),
      ...Object.keys(OTHER_ACCENTS),
      'point',
      'oh',
      'tag',
      'animal',
      'take',
      'number',
      ...DIGIT_WORDS,
      ...TEEN_WORDS,
      ...TENS_WORDS,
    ];
    expect(words.filter((word) => look(word).length === 0)).toEqual([]);
  });
});

import { describe, expect, test } from 'vitest';
import { OTHER_ACCENTS } from '../../../core/speech/accents.ts';
import { grammarOf } from '../../../core/speech/jsgf.ts';
import { mayBeHeard } from '../../../core/speech/may-be-heard.ts';
import { type Dictionary, guessPronunciation } from '../../../core/speech/pronounce.ts';
import { sceneAt } from './hearing-scene.ts';

/** A dictionary of everything but the words told. */
const allBut =
  (...missing: string[]): Dictionary =>
  (word) =>
    missing.includes(word) ? [] : [`P${word.length}`];

describe('the grammar text', () => {
  test('holds the phrases, zero as oh too, and every word with its sound', () => {
    const grammar = grammarOf(mayBeHeard(sceneAt('visit: who only')), allBut());
    expect(grammar.jsgf.split('\n').slice(0, 2)).toEqual(['#JSGF V1.0;', 'grammar heard;']);
    expect(grammar.jsgf).toContain('| tag four one seven |');
    expect(grammar.jsgf).toContain('tail score (zero | oh)');
    expect(grammar.pronunciations.get('oh')).toEqual(['P2']);
    expect(grammar.guessed).toEqual([]);
  });

  test('holds any volume while a dose is on offer, and never the dose itself', () => {
    const { jsgf } = grammarOf(mayBeHeard(sceneAt('offered')), allBut());
    expect(jsgf).toContain('<given> = given (<whole> [point <digit>] | <undone>) mils;');
    expect(jsgf.match(/<given>/g)).toHaveLength(2);
    expect(grammarOf(mayBeHeard(sceneAt('logged')), allBut()).jsgf).not.toContain('given');
  });

  test('tells which sounds are guessed, and leaves out what cannot be guessed', () => {
    const scene = sceneAt('visit: empty');
    const animals = scene.animals.map((animal) =>
      animal.id === 'ella' ? { ...animal, name: "O'ddly", visualTags: [] } : animal,
    );
    const grammar = grammarOf(mayBeHeard({ ...scene, animals }), allBut('bella', "o'ddly"));
    expect(grammar.guessed).toEqual(['bella']);
    expect(grammar.pronunciations.get('bella')).toEqual(['B EH L AH']);
    expect(grammar.unsayable).toEqual(["animal o'ddly"]);
    expect(grammar.jsgf).not.toContain("o'ddly");
  });

  test('nothing to hear is a grammar that hears nothing', () => {
    expect(grammarOf({ phrases: [], given: null, leftOut: [] }, allBut()).jsgf).toContain('<VOID>');
  });
});

test('words are also known as other accents say them, unless no dictionary knows them', () => {
  const sounds = (dictionary: Dictionary) =>
    grammarOf(mayBeHeard(sceneAt('visit: empty')), dictionary).pronunciations.get('tag');
  expect(sounds(() => ['T AE G'])).toEqual(['T AE G', ...(OTHER_ACCENTS['tag'] ?? [])]);
  expect(sounds(() => ['T AA G'])).toEqual(['T AA G', 'T AH G']);
  expect(sounds(allBut('tag'))).toEqual(['T AE G']);
});

describe('a sound guessed from spelling', () => {
  test.each([
    ['burdock', 'B ER D AA K'],
    ['bracken', 'B R AE K EH N'],
    ['daisy', 'D EY S IY'],
    ['dolly', 'D AA L IY'],
    ['jane', 'JH EY N'],
    ['phoebe', 'F AA IY B'],
    ['cinder', 'S IH N D ER'],
  ])('%s', (word, phones) => {
    expect(guessPronunciation(word)).toBe(phones);
  });

  test.each(['', 'x', 'r2', "o'brien", 'zoë', 'a'.repeat(25)])('"%s" is not guessed', (word) => {
    expect(guessPronunciation(word)).toBeNull();
  });
});

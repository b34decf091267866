import { describe, expect, test } from 'vitest';
import { animalPhrases } from '../../../core/speech/animal-phrases.ts';
import { sentences } from './hearing-scene.ts';

const called = (id: string, name: string, visualTags: string[] = [], tag: string | null = null) => ({
  id,
  name,
  tag,
  visualTags,
});

describe('how animals may be called', () => {
  test('by a visual tag, digit by digit or its last two as a pair, and by name', () => {
    const { phrases, leftOut } = animalPhrases([called('a', 'Big Thistle', ['417'])]);
    expect(sentences(phrases)).toEqual(['tag four one seven', 'tag four seventeen', 'animal big thistle']);
    expect(leftOut).toEqual([]);
  });

  test('a name that is a number is a tag', () => {
    expect(sentences(animalPhrases([called('a', '42')]).phrases)).toEqual(['tag four two', 'tag forty two']);
  });

  test('by the end of its electronic tag where it wears no other', () => {
    const { phrases } = animalPhrases([called('a', 'Moss', [], '998000000000110')]);
    expect(sentences(phrases)).toContain('tag zero one one zero');
  });

  test('a number of two animals calls neither, and is told', () => {
    const { phrases, leftOut } = animalPhrases([
      called('a', 'Moss', ['12']),
      called('b', 'Fern', ['12']),
      called('c', 'FERN'),
    ]);
    expect(sentences(phrases)).toEqual(['animal moss']);
    expect(leftOut).toEqual([
      { what: '12', why: 'shared' },
      { what: 'Fern', why: 'shared' },
    ]);
  });

  test('numbers out of length and names not in plain letters are told', () => {
    const { phrases, leftOut } = animalPhrases([called('a', 'R2', ['7', 'G12', '12345'])]);
    expect(phrases).toEqual([]);
    expect(leftOut.map(({ what, why }) => `${what} ${why}`)).toEqual([
      '7 not-2-to-4-digits',
      'G12 not-2-to-4-digits',
      '12345 not-2-to-4-digits',
      'R2 not-plain-letters',
    ]);
  });

  test('teens and tens that could be taken for each other are said digit by digit alone', () => {
    const { phrases } = animalPhrases([called('a', 'Moss', ['415']), called('b', 'Fern', ['450'])]);
    expect(sentences(phrases)).toEqual([
      'tag four one five',
      'tag four five zero',
      'animal moss',
      'animal fern',
    ]);
  });

  test('no sentence calls two animals', () => {
    const herd = Array.from({ length: 989 }, (_, i) => called(`a${i}`, 'x', [String(10 + i)]));
    const { phrases } = animalPhrases(herd);
    expect(new Set(sentences(phrases)).size).toBe(phrases.length);
  });
});

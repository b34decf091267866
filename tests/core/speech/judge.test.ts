import { describe, expect, test } from 'vitest';
import type { Decoded, PathPart } from '../../../core/speech/decoded.ts';
import { ALWAYS } from '../../../core/speech/fixed-phrases.ts';
import {
  fitOf,
  GIVEN_LIMITS,
  judge,
  LEAST_OVER_OTHERS,
  LIMITS,
  toHearAgain,
} from '../../../core/speech/judge.ts';
import type { MayBeHeard } from '../../../core/speech/may-be-heard.ts';

const MAY: MayBeHeard = { phrases: ALWAYS, given: { decimals: 1 }, leftOut: [] };

/** A path of parts of thirty frames each, every frame at the score told. */
function path(parts: readonly (readonly [string, number])[], frames = 30): PathPart[] {
  return parts.map(([word, perFrame], i) => ({
    word,
    from: i * frames,
    to: (i + 1) * frames - 1,
    acoustic: perFrame * frames,
  }));
}

/** A sound taken for these words, each so much better or worse a frame than phones and everyday words take it. */
function decoded(parts: readonly (readonly [string, number])[], over: Partial<Decoded> = {}): Decoded {
  const commands = path(parts);
  const flat = path(parts.map(() => ['AH', -100]));
  return { frames: 30 * parts.length, commands, rivals: flat, phones: flat, ...over };
}

describe('the judge', () => {
  test('passes a command that explains the sound as well as anything', () => {
    const heard = judge(
      decoded([
        ['<sil>', -100],
        ['home', -95],
        ['screen(2)', -99],
      ]),
      MAY,
    );
    expect(heard).toEqual({
      kind: 'command',
      command: { kind: 'screen', screen: 'home' },
      words: ['home', 'screen'],
      fit: { overPhones: 3, worstWord: 1, whole: 3, overRivals: 3, overOthers: null },
    });
  });

  test.each<[string, Decoded]>([
    [
      'one word far worse than phones',
      decoded([
        ['home', -60],
        ['screen', -101 + LIMITS.worstWord],
      ]),
    ],
    [
      'everyday words explain it better',
      decoded(
        [
          ['home', -100],
          ['screen', -100],
        ],
        { rivals: path([['grain', -99 - LIMITS.overRivals]], 60) },
      ),
    ],
    [
      'much of the sound is left to silence',
      decoded([
        ['home', -95],
        ['screen', -95],
        ['<sil>', -100 + 3 * LIMITS.whole],
      ]),
    ],
    [
      'the rivals came to no end',
      decoded(
        [
          ['home', -90],
          ['screen', -90],
        ],
        { rivals: null },
      ),
    ],
  ])('is unsure where %s', (_, sound) => {
    expect(judge(sound, MAY)).toMatchObject({ kind: 'rejected', why: 'unsure' });
  });

  describe('a dose read back', () => {
    const WORDS = ['given', 'three', 'point', 'two', 'mils'];
    const sound = decoded(WORDS.map((word) => [word, -90]));
    const beating = (by: number): Decoded => ({
      ...sound,
      others: path(WORDS.map((word, at) => [word, at === 0 ? -90 - by / 30 : -90])),
    });

    test('is heard again before it is believed', () => {
      expect(toHearAgain(sound, MAY)).toEqual(WORDS);
      expect(judge(sound, MAY)).toMatchObject({ kind: 'rejected', why: 'unsure' });
      expect(judge(beating(LEAST_OVER_OTHERS + 1e-7), MAY)).toMatchObject({
        kind: 'command',
        command: { kind: 'given', volumeMl: 3.2 },
        fit: { overOthers: expect.closeTo(LEAST_OVER_OTHERS, 6) },
      });
    });

    test('is not believed where another number is near, or where none could be looked for', () => {
      expect(judge(beating(LEAST_OVER_OTHERS - 1), MAY)).toMatchObject({ kind: 'rejected', why: 'unsure' });
      expect(judge({ ...sound, others: null }, MAY)).toMatchObject({ kind: 'rejected', why: 'unsure' });
    });

    test('is not doubted for a number of more words that fits no better', () => {
      const longer = [...(sound.commands ?? []), { word: 'nine', from: 150, to: 151, acoustic: 0 }];
      const fit = fitOf({ ...sound, others: longer });
      expect(fit?.overOthers).toBeGreaterThan(100);
    });

    test('is not heard again where it does not fit, nor is anything else', () => {
      const poor = decoded(WORDS.map((word) => [word, -100 + GIVEN_LIMITS.overPhones - 1]));
      expect(toHearAgain(poor, MAY)).toBeNull();
      expect(judge({ ...poor, others: path([['given', -999]]) }, MAY)).toMatchObject({ why: 'unsure' });
      expect(
        toHearAgain(
          decoded([
            ['home', -90],
            ['screen', -90],
          ]),
          MAY,
        ),
      ).toBeNull();
    });
  });

  test.each<[string, Decoded]>([
    ['no path', decoded([], { commands: null })],
    ['silence', decoded([['<sil>', -90]])],
    ['half a phrase', decoded([['home', -90]])],
    ['no dose', decoded([['given', -90]])],
  ])('%s is no phrase', (_, sound) => {
    expect(judge(sound, MAY)).toMatchObject({ kind: 'rejected', why: 'no-phrase' });
  });

  test('a knock is too short and an engine too long', () => {
    const asLong = (frames: number): Decoded => ({
      ...decoded([]),
      commands: path(
        [
          ['home', -90],
          ['screen', -90],
        ],
        frames,
      ),
    });
    expect(judge(asLong(12), MAY)).toMatchObject({ why: 'too-short' });
    expect(judge(asLong(251), MAY)).toMatchObject({ why: 'too-long' });
  });
});

test('a phone that reaches over a word counts by its share', () => {
  const sound: Decoded = {
    frames: 60,
    commands: path([
      ['home', -90],
      ['screen', -110],
    ]),
    rivals: path([['grain', -100]], 60),
    phones: path([['AH', -100]], 60),
  };
  expect(fitOf(sound)).toEqual({
    overPhones: 0,
    worstWord: -10,
    whole: 0,
    overRivals: 0,
    overOthers: null,
  });
});

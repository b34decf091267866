import { describe, expect, test } from 'vitest';
import type { Decoded, PathPart } from '../../../core/speech/decoded.ts';
import { ALWAYS } from '../../../core/speech/fixed-phrases.ts';
import { fitOf, GIVEN_LIMITS, judge, LIMITS } from '../../../core/speech/judge.ts';
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
      fit: { overPhones: 3, worstWord: 1, whole: 3, overRivals: 3 },
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
        { rivals: path([['grain', -90]], 60) },
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

  test('a dose must fit better than a screen', () => {
    const good = GIVEN_LIMITS.overRivals - 1;
    expect(good).toBeGreaterThan(LIMITS.overRivals);
    const judged = (words: readonly string[]) =>
      judge(decoded(words.map((word) => [word, -100 + good])), MAY);
    expect(judged(['home', 'screen']).kind).toBe('command');
    expect(judged(['given', 'three', 'point', 'two', 'mils'])).toMatchObject({
      kind: 'rejected',
      why: 'unsure',
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
  expect(fitOf(sound)).toEqual({ overPhones: 0, worstWord: -10, whole: 0, overRivals: 0 });
});

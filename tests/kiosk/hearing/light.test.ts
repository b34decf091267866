import { describe, expect, test } from 'vitest';
import { hasEar, lightOf, troubleOf } from '../../../kiosk/hearing/light.ts';
import type { MicrophoneState } from '../../../kiosk/hearing/microphone.ts';
import type { EarView } from '../../../shared/ear.ts';
import { earWith } from '../preview/hearing-scenes.ts';

const done = { number: 1, words: 'next animal', outcome: 'done', sentence: null } as const;
const still = { trouble: null, opening: false, heard: null };

describe('the light', () => {
  test.each<[string, Partial<EarView>, Partial<Parameters<typeof lightOf>[1]>, string]>([
    ['waits', {}, {}, 'waiting'],
    ['is open while a command would be taken', { open: true }, {}, 'open'],
    ['hears', { open: true, listening: 'hearing' }, {}, 'hearing'],
    ['shows hearing before what was heard last', { listening: 'hearing' }, { heard: done }, 'hearing'],
    ['shows what was heard before it waits', { open: true }, { heard: done }, 'done'],
    [
      'is deaf while the kiosk speaks',
      { open: true, listening: 'kiosk-speaking' },
      { heard: done },
      'kiosk-speaking',
    ],
    ['starts', { listening: 'starting' }, {}, 'starting'],
    ['starts while the microphone opens', { open: true }, { opening: true }, 'starting'],
    ['shows trouble before all else', { listening: 'hearing' }, { trouble: 'blocked' }, 'trouble'],
  ])('%s', (_, ear, now, light) => {
    expect(lightOf(earWith(ear), { ...still, ...now })).toBe(light);
  });
});

describe('what keeps the ear from hearing', () => {
  const page = { source: null } as const;
  test.each<[Partial<EarView>, MicrophoneState, boolean, ReturnType<typeof troubleOf>]>([
    [page, 'closed', true, null],
    [{ ...page, trouble: 'no-microphone' }, 'closed', true, null],
    [page, 'blocked', true, 'blocked'],
    [page, 'none', true, 'no-microphone'],
    [page, 'busy', true, 'busy'],
    [page, 'far', true, 'page-far'],
    [page, 'untouched', true, 'untouched'],
    [{ source: 'page', trouble: 'bad-sound' }, 'open', true, 'bad-sound'],
    [{ source: 'page', trouble: 'engine-failing' }, 'open', true, 'engine-failing'],
    [{ source: 'board' }, 'blocked', true, null],
    [{ ...page, trouble: 'blocked' }, 'closed', false, 'blocked'],
  ])('%o with a microphone that is %s, own %s: %s', (ear, microphone, own, trouble) => {
    expect(troubleOf(earWith(ear), microphone, own)).toBe(trouble);
  });

  test.each<[EarView['mode'], EarView['trouble'], boolean]>([
    ['press', null, true],
    ['wake', 'blocked', true],
    ['off', null, false],
    ['press', 'no-engine', false],
  ])('set to %s with trouble %s there is an ear: %s', (mode, trouble, has) => {
    expect(hasEar({ mode, trouble })).toBe(has);
  });
});

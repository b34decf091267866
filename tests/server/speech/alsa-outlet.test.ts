import { expect, test } from 'vitest';
import type { Wav } from '../../../hardware/mouth/wav.ts';
import { createAlsaOutlet } from '../../../server/speech/alsa-outlet.ts';
import { SOUND } from './speaking.ts';

const SETTINGS = { language: 'en', voice: 'en-us', rate: 155, volume: 50, muted: false } as const;

/** A board whose player ends when told to. */
function board() {
  const played: { readonly wav: Wav; end(played: boolean): Promise<void>; cut: boolean }[] = [];
  const outlet = createAlsaOutlet(
    (wav) => {
      let end: (played: boolean) => void = () => {};
      const ended = new Promise<boolean>((resolve) => {
        end = resolve;
      });
      const one = {
        wav,
        cut: false,
        end: async (well: boolean) => {
          end(well);
          await ended;
        },
      };
      played.push(one);
      return {
        ended,
        cut: () => {
          one.cut = true;
          end(true);
        },
      };
    },
    () => {},
  );
  return { outlet, played };
}

test('a kiosk without a screen plays on its board, and tells the end', async () => {
  const { outlet, played } = board();
  let ended = 0;
  outlet.say({ id: 1, wav: SOUND, text: 'stop', settings: SETTINGS }, () => (ended += 1));
  expect(outlet.heard(true)).toBe('heard');
  expect(played[0]?.wav.durationMs).toBe(SOUND.durationMs);
  await played[0]?.end(true);
  expect(ended).toBe(1);
});

test('what is hushed is cut and has no end; a player that fails is told of until it works', async () => {
  const { outlet, played } = board();
  let ended = 0;
  outlet.say({ id: 1, wav: SOUND, text: 'stop', settings: SETTINGS }, () => (ended += 1));
  outlet.hush();
  await Promise.resolve();
  expect([played[0]?.cut, ended]).toEqual([true, 0]);
  outlet.say({ id: 2, wav: SOUND, text: 'stop', settings: SETTINGS }, () => (ended += 1));
  await played[1]?.end(false);
  expect([outlet.heard(true), ended]).toEqual(['no-player', 1]);
  outlet.sound('held', 50);
  await played[2]?.end(true);
  expect(outlet.heard(true)).toBe('heard');
});

test('without an engine there are no words', () => {
  const { outlet } = board();
  let ended = 0;
  outlet.say({ id: 1, wav: null, text: 'stop', settings: SETTINGS }, () => (ended += 1));
  expect([outlet.heard(false), ended]).toEqual(['no-voice', 1]);
});

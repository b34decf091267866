import { describe, expect, test } from 'vitest';
import type { Loudspeaker } from '../../../server/speech/loudspeakers.ts';
import { createPageOutlet } from '../../../server/speech/page-outlet.ts';
import type { VoiceMessage } from '../../../shared/voice.ts';
import { SOUND } from './speaking.ts';

const SETTINGS = { language: 'en', voice: 'en-us', rate: 155, volume: 80, muted: false } as const;

function page(own = true) {
  const told: VoiceMessage[] = [];
  return { own, told, send: (message: VoiceMessage) => void told.push(message) } satisfies Loudspeaker & {
    told: VoiceMessage[];
  };
}
const can = { type: 'loudspeaker', can: true, words: false } as const;
const say = (id: number) => ({ id, wav: SOUND, text: 'stop', settings: SETTINGS });

describe('which page speaks', () => {
  test('none, until one of this machine was touched', () => {
    const outlet = createPageOutlet(() => {});
    const [kiosk, telephone] = [page(), page(false)];
    expect(outlet.heard(true)).toBe('no-page');
    outlet.told(telephone, can);
    expect(outlet.heard(true)).toBe('no-page');
    outlet.told(kiosk, { ...can, can: false });
    expect(outlet.heard(true)).toBe('locked');
    outlet.told(kiosk, can);
    expect(outlet.heard(true)).toBe('heard');
    expect(outlet.heard(false)).toBe('no-voice');
    outlet.say(say(1), () => {});
    expect([kiosk.told.length, telephone.told.length]).toEqual([1, 0]);
    expect(kiosk.told[0]).toMatchObject({ type: 'say', id: 1, wav: '/api/speech/1.wav', volume: 80 });
  });

  test('of two the one last touched, and the other again when it is closed', () => {
    const outlet = createPageOutlet(() => {});
    const [first, second] = [page(), page()];
    outlet.told(first, can);
    outlet.told(second, can);
    outlet.sound('held', 50);
    outlet.gone(second);
    outlet.sound('logged', 50);
    expect(second.told).toEqual([{ type: 'earcon', earcon: 'held', volume: 50 }]);
    expect(first.told).toEqual([{ type: 'earcon', earcon: 'logged', volume: 50 }]);
    outlet.gone(first);
    expect(outlet.sound('held', 50)).toBe(false);
  });
});

describe('the end of an utterance', () => {
  test('is believed of the page that says it, of what it says, once', () => {
    const outlet = createPageOutlet(() => {});
    const [kiosk, other] = [page(), page(false)];
    outlet.told(kiosk, can);
    let ended = 0;
    outlet.say(say(4), () => (ended += 1));
    outlet.told(other, { type: 'said', id: 4, how: 'ended' });
    outlet.told(kiosk, { type: 'said', id: 3, how: 'ended' });
    expect(ended).toBe(0);
    outlet.told(kiosk, { type: 'said', id: 4, how: 'failed' });
    outlet.told(kiosk, { type: 'said', id: 4, how: 'ended' });
    expect(ended).toBe(1);
  });

  test('comes with the end of its page; a hushed one has none', () => {
    const outlet = createPageOutlet(() => {});
    const kiosk = page();
    let ended = 0;
    outlet.told(kiosk, can);
    outlet.say(say(1), () => (ended += 1));
    outlet.hush();
    expect(kiosk.told.at(-1)).toEqual({ type: 'hush' });
    outlet.say(say(2), () => (ended += 1));
    outlet.gone(kiosk);
    expect(ended).toBe(1);
    outlet.say(say(3), () => (ended += 1));
    expect(ended).toBe(2);
  });
});

import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { ClientMessage } from '../../shared/message.ts';
import type { VoiceSettings } from '../../shared/voice.ts';
import { type MountedApp, mountApp } from './mount-app.ts';
import { BASE, PLAN } from './preview/base-state.ts';
import { soon } from './soon.ts';

let app: MountedApp | undefined;

/** Web Audio as far as the page uses it: what is started is kept. */
class FakeAudio {
  static last: FakeAudio | undefined;
  state: 'suspended' | 'running' = 'suspended';
  onstatechange: (() => void) | null = null;
  currentTime = 0;
  destination = {};
  readonly started: { readonly samples: number; onended: (() => void) | null; stopped: boolean }[] = [];
  readonly tones: { readonly hz: number[]; stopped: boolean }[] = [];
  constructor() {
    FakeAudio.last = this;
  }
  /** Allowed only from within a touch, as browsers have it. */
  touched = false;
  async resume(): Promise<void> {
    if (!this.touched) return;
    this.state = 'running';
    this.onstatechange?.();
  }
  async close(): Promise<void> {}
  async decodeAudioData(file: ArrayBuffer) {
    if (file.byteLength === 0) throw new Error('no sound');
    return { length: file.byteLength };
  }
  createBuffer(_: number, length: number) {
    return { length, getChannelData: () => new Float32Array(length) };
  }
  createGain() {
    return { gain: { value: 0, setTargetAtTime: () => {} }, connect: () => {} };
  }
  createBufferSource() {
    const node = {
      buffer: null as { length: number } | null,
      samples: 0,
      onended: null as (() => void) | null,
      stopped: false,
      connect: () => {},
      start: () => {
        node.samples = node.buffer?.length ?? 0;
        this.started.push(node);
      },
      stop: () => {
        node.stopped = true;
        node.onended?.();
      },
    };
    return node;
  }
  createOscillator() {
    const tone = { hz: [] as number[], stopped: false };
    this.tones.push(tone);
    return {
      frequency: { value: 0, setTargetAtTime: (hz: number) => void tone.hz.push(hz) },
      connect: () => {},
      start: () => {},
      stop: () => {
        tone.stopped = true;
      },
    };
  }
}

beforeEach(() => {
  FakeAudio.last = undefined;
  vi.stubGlobal('AudioContext', FakeAudio);
});

afterEach(async () => {
  await app?.close();
  vi.unstubAllGlobals();
});

/** The page with its loudspeaker fetched and touched. */
async function unlocked(): Promise<{ page: MountedApp; audio: FakeAudio; told: () => ClientMessage[] }> {
  const page = mountApp(BASE, 'home', {});
  app = page;
  vi.stubGlobal(
    'fetch',
    vi.fn(async (path: string) =>
      path.endsWith('.wav') ? new Response(new Uint8Array(1000)) : new Response(null, { status: 404 }),
    ),
  );
  const audio = await soon(() => {
    if (FakeAudio.last === undefined) throw new Error('no loudspeaker yet');
    return FakeAudio.last;
  });
  await soon(() =>
    expect(page.socket.sent).toContainEqual({ type: 'loudspeaker', can: false, words: false }),
  );
  audio.touched = true;
  page.press('door-platform', 'pointerdown');
  await soon(() => expect(page.socket.sent).toContainEqual({ type: 'loudspeaker', can: true, words: false }));
  return { page, audio, told: () => page.socket.sent.filter(({ type }) => type === 'said') };
}

const say = (id: number, wav: string | null = `/api/speech/${id}.wav`) =>
  ({ type: 'say', id, wav, text: 'stop', language: 'en', rate: 155, volume: 80 }) as const;

describe('the loudspeaker of the page', () => {
  test('plays what the server says once it was touched, and tells the end', async () => {
    const { page, audio, told } = await unlocked();
    page.socket.tell(say(4));
    await soon(() => expect(audio.started).toHaveLength(1));
    expect(fetch).toHaveBeenCalledWith('/api/speech/4.wav');
    expect(audio.started[0]?.samples).toBe(1000);
    expect(told()).toEqual([]);
    audio.started[0]?.onended?.();
    await soon(() => expect(told()).toEqual([{ type: 'said', id: 4, how: 'ended' }]));
  });

  test('a newer word cuts off the older one, whose end is not told', async () => {
    const { page, audio, told } = await unlocked();
    page.socket.tell(say(4));
    await soon(() => expect(audio.started).toHaveLength(1));
    page.socket.tell(say(5));
    await soon(() => expect(audio.started).toHaveLength(2));
    expect(audio.started[0]?.stopped).toBe(true);
    page.socket.tell({ type: 'hush' });
    expect(audio.started[1]?.stopped).toBe(true);
    expect(told()).toEqual([]);
  });

  test('a word that cannot be fetched, or spoken, is told as failed', async () => {
    const { page, told } = await unlocked();
    page.socket.tell(say(6, '/nowhere'));
    await soon(() => expect(told()).toEqual([{ type: 'said', id: 6, how: 'failed' }]));
    page.socket.tell(say(7, null));
    await soon(() => expect(told()).toContainEqual({ type: 'said', id: 7, how: 'failed' }));
  });

  test('an earcon sounds beside a word', async () => {
    const { page, audio } = await unlocked();
    page.socket.tell(say(4));
    await soon(() => expect(audio.started).toHaveLength(1));
    page.socket.tell({ type: 'earcon', earcon: 'held', volume: 50 });
    expect(audio.started).toHaveLength(2);
    expect(audio.started[0]?.stopped).toBe(false);
  });

  test('a tone rises as the water nears its target, and ends there', async () => {
    const { page, audio } = await unlocked();
    page.socket.tell({ type: 'earcon', earcon: 'settle', volume: 50 });
    const pour = (nowGrams: number, advice: 'slow' | 'stop') =>
      page.patch({
        jug: {
          step: 'pour',
          plan: PLAN,
          letter: 'A',
          pour: { advice, nowGrams, targetGrams: 900, bandGrams: 5, steady: false, farStrengthMgPerMl: null },
        },
      });
    pour(820, 'slow');
    pour(880, 'slow');
    expect(audio.tones).toHaveLength(1);
    const [low = 0, high = 0] = audio.tones[0]?.hz ?? [];
    expect(high).toBeGreaterThan(1.3 * low);
    pour(897, 'stop');
    expect(audio.tones[0]?.stopped).toBe(true);
  });

  test('a page that follows and was never spoken through makes no tone', async () => {
    const { page, audio } = await unlocked();
    page.patch({
      jug: {
        step: 'pour',
        plan: PLAN,
        letter: 'A',
        pour: {
          advice: 'slow',
          nowGrams: 880,
          targetGrams: 900,
          bandGrams: 5,
          steady: false,
          farStrengthMgPerMl: null,
        },
      },
    });
    expect(audio.tones).toEqual([]);
  });

  test('without Web Audio the page works in silence', () => {
    vi.stubGlobal('AudioContext', undefined);
    app = mountApp(BASE);
    expect(app.find('door-platform')).not.toBeNull();
  });
});

describe('the voice at Shed', () => {
  const SETTINGS: VoiceSettings = { language: 'en', voice: 'en-us', rate: 155, volume: 80, muted: false };

  test.each<[string, Partial<VoiceSettings>]>([
    ['voice-mute', { muted: true }],
    ['voice-language', { language: 'es' }],
    ['voice-next', { voice: 'en-gb' }],
    ['voice-rate-more', { rate: 170 }],
    ['voice-rate-less', { rate: 140 }],
    ['voice-volume-less', { volume: 70 }],
  ])('a tap on %s keeps one change', async (testid, change) => {
    const page = mountApp(BASE, 'shed/voice');
    app = page;
    await soon(() => page.get(testid));
    page.click(testid);
    expect(page.socket.intents).toEqual([
      { type: 'set-voice', id: expect.any(String), voice: { ...SETTINGS, ...change } },
    ]);
  });

  test('it can be tried, and so can each sound', async () => {
    const page = mountApp(BASE, 'shed/voice');
    app = page;
    await soon(() => page.get('voice-try'));
    page.click('voice-try');
    page.click('voice-sounds');
    page.click('sound-stop');
    expect(page.socket.intents).toMatchObject([
      { type: 'try-voice', earcon: null },
      { type: 'try-voice', earcon: 'stop' },
    ]);
  });

  test('the ends of both scales are ends, and why it is not heard is told', async () => {
    const page = mountApp(
      { ...BASE, voice: { ...BASE.voice, rate: 230, volume: 20, heard: 'locked' } },
      'shed/voice',
    );
    app = page;
    await soon(() => page.get('voice-try'));
    expect(page.get('voice-rate-more')).toMatchObject({ disabled: true });
    expect(page.get('voice-volume-less')).toMatchObject({ disabled: true });
    expect(page.text('voice-notice')).toMatch(/touch the screen/);
  });
});

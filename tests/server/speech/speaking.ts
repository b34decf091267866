import type { Earcon } from '../../../core/speech/earcon.ts';
import { type Mouth, MouthError } from '../../../hardware/mouth/mouth.ts';
import { wavOfSamples } from '../../../hardware/mouth/wav.ts';
import type { Outlet, Spoken } from '../../../server/speech/outlet.ts';
import { createSpeaker } from '../../../server/speech/speaker.ts';
import type { VoiceView } from '../../../shared/voice.ts';
import { ManualTimers } from '../../hardware/manual-timers.ts';
import { type TestBarn, testBarn } from '../make/test-barn.ts';

/** One second of sound. */
export const SOUND = wavOfSamples(new Float32Array(1000), 1000);

/** A barn with a speaker whose engine and loudspeaker are made of nothing. */
export function speaking(test: TestBarn = testBarn()) {
  const timers = new ManualTimers();
  const said: string[] = [];
  const sounds: Earcon[] = [];
  const heard: { now: VoiceView['heard'] } = { now: 'heard' };
  let now: { readonly spoken: Spoken; readonly ended: () => void } | null = null;
  const engine = { broken: false, rendered: [] as string[] };
  const mouth: Mouth = {
    async render(text) {
      engine.rendered.push(text);
      if (engine.broken) throw new MouthError('gave no sound');
      return SOUND;
    },
    warm: () => {},
    stop: () => {},
  };
  const outlet: Outlet = {
    heard: () => heard.now,
    words: () => false,
    say(spoken, ended) {
      said.push(spoken.text);
      now = { spoken, ended };
    },
    hush() {
      said.push('(hush)');
      now = null;
    },
    sound: (earcon) => sounds.push(earcon) > 0,
  };
  const failures: string[] = [];
  const speaker = createSpeaker({
    barn: test.barn.context,
    timers,
    mouth,
    outlet,
    changed: () => {},
    log: (message) => failures.push(message),
  });
  speaker.look();
  /** Lets promises settle. */
  const settle = () => timers.advance(0);
  return {
    test,
    speaker,
    timers,
    engine,
    heard,
    said,
    sounds,
    failures,
    settle,
    /** Looks, and lets the engine render. */
    async look() {
      speaker.look();
      await settle();
    },
    /** What is being said comes to its end. */
    async end() {
      now?.ended();
      await settle();
    },
    /** Both clocks go on. */
    async pass(ms: number) {
      test.clock.pass(ms);
      await timers.advance(ms);
    },
  };
}

import type { Mass } from '../../core/quantity/mass.ts';
import { stepsIn } from '../../core/quantity/round.ts';
import type { TimerHandle, Timers } from '../serial/timers.ts';
import type { Face, Indication } from './indication.ts';
import { MotionDetector } from './motion-detector.ts';
import { DevicePlug, type SimDevice } from './sim-device.ts';
import { type Reply, SIM_VOICES, type SimFormat, type SimScaleBody, type SimVoice } from './sim-voice.ts';

/** Readings are taken, and sent by a scale that sends by itself, ten times a second. */
const TICK_MS = 100;
/** From a question to its answer. */
const REPLY_MS = 30;

/** What a simulated scale is made of. */
export interface SimScaleOptions {
  readonly timers: Timers;
  readonly face: Face;
  readonly capacity: Mass;
  readonly format: SimFormat;
  /** The true load at an uptime in milliseconds. */
  readonly load: (atMs: number) => Mass;
  /** True while the load changes however slowly, as under a stream of liquid. */
  readonly changing: (atMs: number) => boolean;
}

/** A scale with its two buttons. */
export interface SimScale extends SimDevice {
  /** Takes what stands on the scale off every later weight, which is then net. */
  pressTare(): void;
  clearTare(): void;
  /** Puts another scale in its place, without zero or tare, that counts and carries so. */
  becomeAnother(division: Mass, capacity: Mass): void;
}

/** Starts a scale: it weighs at once, and speaks when it is plugged in. */
export function createSimScale(options: SimScaleOptions): SimScale {
  const { timers } = options;
  let { face, capacity } = options;
  const plug = new DevicePlug();
  let motion = new MotionDetector(face.division.value);
  const voice: SimVoice = SIM_VOICES[options.format];
  let zero = 0;
  let tare = 0;
  let gross = 0;
  let moving = false;
  let timer: TimerHandle = timers.set(tick, 0);
  let stopped = false;

  function tick(): void {
    const now = timers.now();
    const load = options.load(now);
    gross = stepsIn(load.value, face.division.value, 'nearest') - zero;
    moving = motion.moves(now, load.value) || options.changing(now);
    if (voice.stream !== null) plug.send(voice.stream(shown(), face));
    timer = timers.set(tick, TICK_MS);
  }

  function shown(): Indication {
    const most = stepsIn(capacity.value, face.division.value, 'down');
    // A scale shows a few divisions below zero as such; much less means that the deck hangs.
    const range = gross > most ? 'over' : gross < -most / 50 ? 'under' : 'within';
    return { steps: gross - tare, moving, net: tare !== 0, range };
  }

  function press(button: 'tare' | 'clear' | 'zero'): boolean {
    if (button === 'zero') {
      // A scale in motion has no zero to take.
      if (moving) return false;
      zero += gross;
      gross = 0;
    }
    tare = button === 'tare' ? gross : 0;
    return true;
  }

  const body: SimScaleBody = {
    get face() {
      return face;
    },
    get capacity() {
      return capacity;
    },
    shown,
    press,
    tare: () => ({ steps: tare, moving: false, net: false, range: 'within' }),
  };

  function reply(make: Reply): void {
    timers.set(() => {
      if (!stopped) plug.send(make());
    }, REPLY_MS);
  }

  return {
    attach(connection) {
      const hear = voice.listen?.(body);
      plug.attach(connection, (chunk) => {
        for (const make of hear?.(chunk) ?? []) reply(make);
      });
    },
    disturb: (fault) => plug.disturb(fault),
    pressTare: () => void press('tare'),
    clearTare: () => void press('clear'),
    becomeAnother(division, most) {
      face = { ...face, division };
      capacity = most;
      motion = new MotionDetector(division.value);
      zero = 0;
      tare = 0;
    },
    stop() {
      stopped = true;
      timers.clear(timer);
    },
  };
}

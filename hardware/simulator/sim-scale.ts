import type { Mass } from '../../core/quantity/mass.ts';
import { stepsIn } from '../../core/quantity/round.ts';
import { SmaFramer } from '../serial/sma-framer.ts';
import type { TimerHandle, Timers } from '../serial/timers.ts';
import { encodeSma } from './encode-sma.ts';
import { encodeStGs } from './encode-st-gs.ts';
import type { Face, Indication } from './indication.ts';
import { MotionDetector } from './motion-detector.ts';
import { DevicePlug, type SimDevice } from './sim-device.ts';

/** Readings are taken, and sent by a scale that sends by itself, ten times a second. */
const TICK_MS = 100;
/** From a question to its answer. */
const REPLY_MS = 30;
const LF_QUESTION_CR = Uint8Array.of(0x0a, 0x3f, 0x0d);

/** What a simulated scale is made of. */
export interface SimScaleOptions {
  readonly timers: Timers;
  readonly face: Face;
  readonly capacity: Mass;
  readonly format: 'sma' | 'st-gs';
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
}

/** Starts a scale: it weighs at once, and speaks when it is plugged in. */
export function createSimScale(options: SimScaleOptions): SimScale {
  const { timers, face } = options;
  const plug = new DevicePlug();
  const motion = new MotionDetector(face.division.value);
  let tare = 0;
  let gross = 0;
  let moving = false;
  let timer: TimerHandle = timers.set(tick, 0);
  let stopped = false;

  function tick(): void {
    const now = timers.now();
    const load = options.load(now);
    gross = stepsIn(load.value, face.division.value, 'nearest');
    moving = motion.moves(now, load.value) || options.changing(now);
    if (options.format === 'st-gs') plug.send(encodeStGs(shown(), face, 'B'));
    timer = timers.set(tick, TICK_MS);
  }

  function shown(): Indication {
    const most = stepsIn(options.capacity.value, face.division.value, 'down');
    // A scale shows a few divisions below zero as such; much less means that the deck hangs.
    const range = gross > most ? 'over' : gross < -most / 50 ? 'under' : 'within';
    return { steps: gross - tare, moving, net: tare !== 0, range };
  }

  function answer(command: string): void {
    if (command === 'T') tare = gross;
    if (command === 'C') tare = 0;
    const known = ['W', 'T', 'C'].includes(command);
    timers.set(() => {
      if (!stopped) plug.send(known ? encodeSma(shown(), face) : LF_QUESTION_CR);
    }, REPLY_MS);
  }

  return {
    attach(connection) {
      const framer = new SmaFramer();
      plug.attach(connection, (chunk) => {
        if (options.format !== 'sma') return;
        for (const framed of framer.push(chunk)) if (framed.kind === 'line') answer(framed.text);
      });
    },
    disturb: (fault) => plug.disturb(fault),
    pressTare() {
      tare = gross;
    },
    clearTare() {
      tare = 0;
    },
    stop() {
      stopped = true;
      timers.clear(timer);
    },
  };
}

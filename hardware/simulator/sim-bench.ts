import { grams, kilograms, type Mass } from '../../core/quantity/mass.ts';
import type { Timers } from '../serial/timers.ts';
import { createSimScale, type SimScale } from './sim-scale.ts';

/** How long a jug takes to be set down or lifted, in milliseconds. Assumed. */
const SET_DOWN_MS = 300;
/** How long a packet of powder takes to run out, in milliseconds. Assumed. */
const POWDER_MS = 1200;

/** A kitchen scale and the jug on it. */
export interface SimBench extends SimScale {
  /** Sets a jug of this mass down, whatever is in it. Throws where one stands already. */
  placeJug(mass: Mass): void;
  /** Takes the jug and all that is in it away, and tells its mass. A stream into it ends. */
  liftJug(): Mass;
  /** Pours at so much a second, up to a total or, without one, until `stopPour`. Replaces a pour under way. */
  pour(massPerSecond: Mass, total?: Mass): void;
  stopPour(): void;
  /** Sets something down beside or without a jug, or takes it off again with a mass below zero. */
  putOn(mass: Mass): void;
  /** Empties a packet into the jug. */
  addPowder(mass: Mass): void;
}

/** What a simulated bench needs. */
export interface SimBenchOptions {
  readonly timers: Timers;
  /** 1 g unless told otherwise. */
  readonly division?: Mass;
  /** 5 kg unless told otherwise. */
  readonly capacity?: Mass;
}

/** Mass that comes onto the pan evenly over a time; below zero it leaves. */
interface Arrival {
  readonly grams: number;
  readonly from: number;
  readonly overMs: number;
}

/** Starts a bench that answers `sma` questions in grams. */
export function createSimBench(options: SimBenchOptions): SimBench {
  const { timers } = options;
  const now = () => timers.now();
  let rest = 0;
  let arrivals: Arrival[] = [];
  let stream: Arrival | null = null;
  let jug = false;

  function arrived(one: Arrival, at: number): number {
    return one.grams * Math.min(1, Math.max(0, (at - one.from) / one.overMs));
  }
  function loadAt(at: number): Mass {
    for (const done of arrivals.filter((one) => at - one.from >= one.overMs)) rest += done.grams;
    arrivals = arrivals.filter((one) => at - one.from < one.overMs);
    const running = stream === null ? 0 : arrived(stream, at);
    return grams(arrivals.reduce((sum, one) => sum + arrived(one, at), rest + running));
  }
  function bring(mass: Mass, overMs: number): void {
    arrivals.push({ grams: mass.value, from: now(), overMs });
  }
  function stopPour(): void {
    if (stream !== null) rest += arrived(stream, now());
    stream = null;
  }
  function flows(at: number): boolean {
    return stream !== null && at - stream.from < stream.overMs;
  }

  const scale = createSimScale({
    timers,
    face: { unit: 'g', division: options.division ?? grams(1) },
    capacity: options.capacity ?? kilograms(5),
    format: 'sma',
    load: loadAt,
    changing: (at) => flows(at) || arrivals.length > 0,
  });

  return {
    ...scale,
    placeJug(mass) {
      if (jug) throw new Error('a jug stands on the bench already');
      jug = true;
      bring(mass, SET_DOWN_MS);
    },
    liftJug() {
      stopPour();
      // What was still arriving goes with the jug, whole.
      const held = grams(arrivals.reduce((sum, one) => sum + one.grams, rest));
      rest = held.value;
      arrivals = [];
      jug = false;
      bring(grams(-held.value), SET_DOWN_MS);
      return held;
    },
    pour(massPerSecond, total) {
      stopPour();
      if (!(massPerSecond.value > 0)) throw new RangeError('a stream must bring something');
      // An hour stands for "until stopped".
      const seconds = total === undefined ? 3600 : total.value / massPerSecond.value;
      stream = { grams: massPerSecond.value * seconds, from: now(), overMs: Math.max(1, seconds * 1000) };
    },
    stopPour,
    putOn(mass) {
      bring(mass, SET_DOWN_MS);
    },
    addPowder(mass) {
      bring(mass, POWDER_MS);
    },
  };
}

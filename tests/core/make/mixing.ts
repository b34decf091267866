import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { IDLE_MIXING, type MixingWorld, reduceMixing } from '../../../core/jug/reduce.ts';
import type { Mixing, MixingEvent, MixingOutcome, MixingStep } from '../../../core/jug/state.ts';
import { makeBench } from './bench.ts';
import { NINE_OCLOCK, UP } from './time.ts';

/** The empty jug of the mixing tests, and the water the plan asks for at 20 °C, in grams. */
export const JUG_GRAMS = 300;
export const WATER_GRAMS = 902.18;
export const PACKET_GRAMS = 52;

/** The mixing's world with this many grams on the bench. */
export function mixingWorld(onBench: number, over: Partial<MixingWorld> = {}): MixingWorld {
  return {
    formulary: SHIPPED,
    now: { uptimeMs: UP, wallMs: NINE_OCLOCK },
    clockTrusted: true,
    by: 'Kim',
    bench: makeBench(onBench),
    benchReady: true,
    freshId: 'jug-new',
    nextNumber: 8,
    ...over,
  };
}

/** What stands on the bench when each event is meant to happen. */
export const ON_BENCH: Readonly<Record<MixingEvent['type'], number>> = {
  start: 0,
  'water-temperature': 0,
  'jug-placed': JUG_GRAMS,
  poured: JUG_GRAMS + WATER_GRAMS,
  weighed: JUG_GRAMS + WATER_GRAMS + PACKET_GRAMS,
  dissolved: JUG_GRAMS + WATER_GRAMS + PACKET_GRAMS,
  'in-service': 0,
  stored: 0,
  cancel: 0,
};

/** The work in its order. */
export const WORK: readonly MixingEvent[] = [
  { type: 'start', packetId: 'levamisole-52g' },
  { type: 'water-temperature', celsius: 20 },
  { type: 'jug-placed' },
  { type: 'poured' },
  { type: 'weighed' },
  { type: 'dissolved' },
];

const AFTER: Readonly<Record<MixingStep, number>> = {
  idle: 0,
  water: 1,
  place: 2,
  pour: 3,
  powder: 4,
  dissolve: 5,
  label: 6,
};

/** The mixing at a step, reached by doing the work in its order. */
export function mixingAt(step: MixingStep): Mixing {
  return WORK.slice(0, AFTER[step]).reduce<Mixing>((mixing, event) => {
    const next = reduceMixing(mixing, event, mixingWorld(ON_BENCH[event.type]));
    if (next.refused !== null) throw new Error(`the test's own ${event.type} was refused: ${next.refused}`);
    return next.mixing;
  }, IDLE_MIXING);
}

/** The mixing that must stand at one step. */
export function standsAt<S extends MixingStep>(
  outcome: MixingOutcome,
  step: S,
): Extract<Mixing, { step: S }> {
  if (outcome.mixing.step !== step)
    throw new Error(`the mixing stands at ${outcome.mixing.step}, not ${step}`);
  return outcome.mixing as Extract<Mixing, { step: S }>;
}

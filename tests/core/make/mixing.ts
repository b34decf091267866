import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { reduceMixing } from '../../../core/jug/reduce.ts';
import type { Mixing, MixingAt, MixingEvent, MixingOutcome, MixingStep } from '../../../core/jug/state.ts';
import { IDLE_MIXING, type MixingWorld } from '../../../core/jug/world.ts';
import type { PowderAmount } from '../../../core/mixing/plan.ts';
import { makeBench } from './bench.ts';
import { NINE_OCLOCK, UP } from './time.ts';
import { makeVessel } from './vessel.ts';

/** The empty jug of the mixing tests, and the water the plan asks for at 20 °C, in grams. */
export const JUG_GRAMS = 300;
export const WATER_GRAMS = 902.18;
export const PACKET_GRAMS = 52;
/** One US quart, the packet's own volume. */
export const QUART_ML = 946.352946;

/** The mixing's world with this many grams on the bench; jug A of 300 g is known. */
export function mixingWorld(onBench: number, over: Partial<MixingWorld> = {}): MixingWorld {
  return {
    formulary: SHIPPED,
    now: { uptimeMs: UP, wallMs: NINE_OCLOCK },
    clockTrusted: true,
    by: 'Kim',
    bench: makeBench(onBench),
    benchReady: true,
    approvals: [],
    animals: [],
    syringes: [],
    vessels: [makeVessel()],
    jugs: [],
    stock: [],
    freshId: 'jug-new',
    nextNumber: 8,
    ...over,
  };
}

/** The same world on a bench that counts in other steps, in grams. */
export function onScaleOf(division: number, onBench: number, over: Partial<MixingWorld> = {}): MixingWorld {
  return mixingWorld(onBench, {
    bench: makeBench(onBench, { division: { unit: 'g', value: division } }),
    ...over,
  });
}

/** What stands on the bench when each event is meant to happen. */
export const ON_BENCH: Readonly<Record<MixingEvent['type'], number>> = {
  start: 0,
  lot: 0,
  amount: 0,
  mode: 0,
  look: 0,
  dilution: 0,
  'water-temperature': 0,
  'jug-placed': JUG_GRAMS,
  'jug-is-empty': 2 * JUG_GRAMS,
  poured: JUG_GRAMS + WATER_GRAMS,
  'powder-in': JUG_GRAMS + WATER_GRAMS + PACKET_GRAMS,
  weighed: JUG_GRAMS + WATER_GRAMS + PACKET_GRAMS,
  dissolved: JUG_GRAMS + WATER_GRAMS + PACKET_GRAMS,
  'in-service': 0,
  stored: 0,
  cancel: 0,
};

/** The water is in. */
export const POURED: MixingEvent = { type: 'poured', deliberate: false };

/** The work in its order. */
export const WORK: readonly MixingEvent[] = [
  { type: 'start', packetId: 'levamisole-52g' },
  { type: 'dilution', perPacketMl: QUART_ML, deliberate: false },
  { type: 'water-temperature', celsius: 20 },
  { type: 'jug-placed' },
  POURED,
  { type: 'weighed' },
  { type: 'dissolved' },
];

const AFTER: Readonly<Record<Exclude<MixingStep, 'new-jug' | 'lot'>, number>> = {
  idle: 0,
  dilution: 1,
  water: 2,
  place: 3,
  pour: 4,
  powder: 5,
  dissolve: 6,
  label: 7,
};

function take(mixing: Mixing, event: MixingEvent, world: MixingWorld): Mixing {
  const next = reduceMixing(mixing, event, world);
  if (next.refused !== null) throw new Error(`the test's own ${event.type} was refused: ${next.refused}`);
  return next.mixing;
}

/** The mixing at a step, reached by doing the work in its order; an unknown jug of twice the weight is asked about. */
export function mixingAt<S extends MixingStep>(step: S): MixingAt<S> {
  if (step === 'lot')
    return standsAt(
      { mixing: { step: 'lot', packetId: 'levamisole-52g' }, effects: [], refused: null },
      step,
    );
  const work = step === 'new-jug' ? 3 : AFTER[step as keyof typeof AFTER];
  const reached = WORK.slice(0, work).reduce<Mixing>(
    (mixing, event) => take(mixing, event, mixingWorld(ON_BENCH[event.type])),
    IDLE_MIXING,
  );
  const mixing =
    step === 'new-jug' ? take(reached, { type: 'jug-placed' }, mixingWorld(2 * JUG_GRAMS)) : reached;
  return standsAt({ mixing, effects: [], refused: null }, step);
}

/** The mixing of another amount or volume, with its jug just set down on a scale that counts in `division` grams. */
export function pourOf(
  { amount, perPacketMl }: { amount?: PowderAmount; perPacketMl?: number },
  division = 1,
): MixingAt<'pour'> {
  const events: MixingEvent[] = [
    { type: 'start', packetId: 'levamisole-52g' },
    { type: 'amount', amount: amount ?? { kind: 'packets', count: 1 } },
    { type: 'dilution', perPacketMl: perPacketMl ?? QUART_ML, deliberate: false },
    { type: 'water-temperature', celsius: 20 },
    { type: 'jug-placed' },
  ];
  const mixing = events.reduce<Mixing>(
    (before, event) => take(before, event, onScaleOf(division, ON_BENCH[event.type])),
    IDLE_MIXING,
  );
  return standsAt({ mixing, effects: [], refused: null }, 'pour');
}

/** The mixing that must stand at one step. */
export function standsAt<S extends MixingStep>(outcome: MixingOutcome, step: S): MixingAt<S> {
  if (outcome.mixing.step !== step)
    throw new Error(`the mixing stands at ${outcome.mixing.step}, not ${step} (${outcome.refused})`);
  return outcome.mixing as MixingAt<S>;
}

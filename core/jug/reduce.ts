import { type Formulary, packetById } from '../medicine/formulary.ts';
import { achievedStrength, withPowderSeen } from '../mixing/achieved.ts';
import { planMix } from '../mixing/plan.ts';
import { pourBand } from '../mixing/pour.ts';
import { isTooCoarse, judgePowder } from '../mixing/powder.ts';
import { HOUR_MS, type Moment } from '../moment.ts';
import { grams, type Mass } from '../quantity/mass.ts';
import { subtract } from '../quantity/quantity.ts';
import { celsius } from '../quantity/temperature.ts';
import { millilitres } from '../quantity/volume.ts';
import { unreachable } from '../unreachable.ts';
import type { Bench } from '../weighing/bench.ts';
import type { Mixing, MixingEvent, MixingOutcome, MixingRefusal } from './state.ts';
import { watchPowder } from './watch-powder.ts';

/** What the mixing may look at while it takes a step. */
export interface MixingWorld {
  readonly formulary: Formulary;
  readonly now: Moment;
  readonly clockTrusted: boolean;
  readonly by: string;
  readonly bench: Bench;
  readonly benchReady: boolean;
  /** An id nobody has used, for the jug this step may make. */
  readonly freshId: string;
  /** The number the next jug wears. */
  readonly nextNumber: number;
}

/** The mixing before a medicine is chosen. */
export const IDLE_MIXING: Mixing = { step: 'idle' };

/** Nothing lighter than this is a jug, in grams. */
const LIGHTEST_JUG = 20;

/** Takes one step of the mixing. Pure; intents that do not fit the step are refused, weighings are ignored. */
export function reduceMixing(mixing: Mixing, event: MixingEvent, world: MixingWorld): MixingOutcome {
  switch (event.type) {
    case 'start':
      return start(mixing, event.packetId, world);
    case 'water-temperature':
      return chooseWater(mixing, event.celsius, world);
    case 'jug-placed':
      return placeJug(mixing, world);
    case 'poured':
      return finishPour(mixing, world);
    case 'weighed':
      return weighPowder(mixing, world);
    case 'dissolved':
      return dissolve(mixing, world);
    case 'in-service':
      if (mixing.step !== 'label') return refuse(mixing, 'wrong-state');
      return { mixing, effects: [{ do: 'store-jug', jug: mixing.jug }], refused: null };
    case 'stored':
      return mixing.step === 'label' ? go(IDLE_MIXING) : go(mixing);
    case 'cancel':
      return mixing.step === 'idle' ? refuse(mixing, 'wrong-state') : go(IDLE_MIXING);
    default:
      return unreachable(event);
  }
}

function go(mixing: Mixing): MixingOutcome {
  return { mixing, effects: [], refused: null };
}

function refuse(mixing: Mixing, refused: MixingRefusal): MixingOutcome {
  return { mixing, effects: [], refused };
}

function start(mixing: Mixing, packetId: string, world: MixingWorld): MixingOutcome {
  if (mixing.step !== 'idle') return refuse(mixing, 'wrong-state');
  return packetById(world.formulary, packetId) === undefined
    ? refuse(mixing, 'no-such-packet')
    : go({ step: 'water', packetId });
}

function chooseWater(mixing: Mixing, degrees: number, world: MixingWorld): MixingOutcome {
  if (mixing.step !== 'water') return refuse(mixing, 'wrong-state');
  if (!(degrees >= 1 && degrees <= 40)) return refuse(mixing, 'temperature-out-of-range');
  const found = packetById(world.formulary, mixing.packetId);
  if (found === undefined) return refuse(mixing, 'no-such-packet');
  return go({ step: 'place', plan: planMix(found.medicine.id, found.packet, celsius(degrees)) });
}

/** The bench at rest, or why it cannot be used. */
function atRest(world: MixingWorld): NonNullable<Bench['steady']> | MixingRefusal {
  if (!world.benchReady || world.bench.live === null) return 'bench-not-ready';
  return world.bench.steady ?? 'bench-moving';
}

function divisionOf(world: MixingWorld): Mass {
  return world.bench.division ?? grams(1);
}

function placeJug(mixing: Mixing, world: MixingWorld): MixingOutcome {
  if (mixing.step !== 'place') return refuse(mixing, 'wrong-state');
  const mass = atRest(world);
  if (typeof mass === 'string') return refuse(mixing, mass);
  if (!world.bench.net && mass.value < LIGHTEST_JUG) return refuse(mixing, 'no-jug-on-scale');
  if (isTooCoarse(mixing.plan.powder, divisionOf(world))) return refuse(mixing, 'scale-too-coarse');
  return go({ step: 'pour', plan: mixing.plan, jugMass: mass, net: world.bench.net });
}

function finishPour(mixing: Mixing, world: MixingWorld): MixingOutcome {
  if (mixing.step !== 'pour') return refuse(mixing, 'wrong-state');
  const mass = atRest(world);
  if (typeof mass === 'string') return refuse(mixing, mass);
  if (world.bench.net !== mixing.net) return refuse(mixing, 'tared-mid-way');
  const { plan } = mixing;
  const water = subtract(mass, mixing.jugMass);
  const division = divisionOf(world);
  if (water.value < plan.water.value - pourBand(plan.water, division).value)
    return refuse(mixing, 'too-little-water');
  const found = packetById(world.formulary, plan.packetId);
  if (found === undefined) return refuse(mixing, 'no-such-packet');
  // The water is a difference of two readings, so the doubt of one counts twice.
  const uncertainty = grams(Math.SQRT2 * (world.bench.uncertainty?.value ?? division.value));
  const achieved = achievedStrength(found.packet, water, uncertainty, plan.temperature);
  return go({
    ...mixing,
    step: 'powder',
    water: { mass: water, uncertainty },
    achieved,
    verdict: 'none',
    seen: grams(0),
  });
}

/**
 * Watches the powder arrive; only a whole packet, at rest, moves the work on.
 *
 * A second packet tipped in behind the first takes it back. Once it is in, a lifted jug says nothing.
 */
function weighPowder(mixing: Mixing, world: MixingWorld): MixingOutcome {
  if (mixing.step !== 'powder' && mixing.step !== 'dissolve') return go(mixing);
  const { bench } = world;
  if (!world.benchReady || bench.steady === null || bench.net !== mixing.net) return go(mixing);
  const rise = subtract(subtract(bench.steady, mixing.jugMass), mixing.water.mass);
  const packet = mixing.plan.powder;
  if (mixing.step === 'dissolve') {
    const verdict = judgePowder(rise, packet, divisionOf(world));
    return verdict === 'too-much' ? go({ ...mixing, step: 'powder', verdict, seen: rise }) : go(mixing);
  }
  const watched = watchPowder(mixing, rise, packet, divisionOf(world));
  return watched.verdict === 'whole' ? wholePacket(mixing, rise, world) : go({ ...mixing, ...watched });
}

function wholePacket(
  { plan, jugMass, net, water, achieved }: Extract<Mixing, { step: 'powder' }>,
  rise: Mass,
  world: MixingWorld,
): MixingOutcome {
  const found = packetById(world.formulary, plan.packetId);
  if (found === undefined) return go(IDLE_MIXING);
  const surer = withPowderSeen(achieved, found.packet, rise, divisionOf(world));
  return go({ step: 'dissolve', plan, jugMass, net, water, achieved: surer });
}

function dissolve(mixing: Mixing, world: MixingWorld): MixingOutcome {
  if (mixing.step !== 'dissolve') return refuse(mixing, 'wrong-state');
  const { plan, achieved } = mixing;
  const found = packetById(world.formulary, plan.packetId);
  if (found === undefined) return refuse(mixing, 'no-such-packet');
  return go({
    step: 'label',
    jug: {
      id: world.freshId,
      number: world.nextNumber,
      medicineId: plan.medicineId,
      packetId: plan.packetId,
      strength: achieved.strength,
      relative: achieved.relative,
      volume: achieved.finalVolume,
      mixedAtMs: world.now.wallMs,
      useByMs: world.now.wallMs + found.packet.jugLifeHours.value * HOUR_MS,
      by: world.by,
      clockTrusted: world.clockTrusted,
      discardedAtMs: null,
      drawn: millilitres(0),
    },
  });
}

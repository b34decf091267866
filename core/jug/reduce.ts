import { unreachable } from '../unreachable.ts';
import { cancel } from './cancelling.ts';
import {
  chooseAmount,
  chooseDilution,
  chooseLot,
  chooseMode,
  chooseWater,
  lookAtDilution,
  start,
} from './choosing.ts';
import { dissolve } from './labelling.ts';
import { learnJug, placeJug } from './placing.ts';
import { finishPour, followPour } from './pouring.ts';
import { finishPowder, weighPowder } from './powdering.ts';
import type { Mixing, MixingEvent, MixingOutcome } from './state.ts';
import { go, IDLE_MIXING, type MixingWorld, refuse } from './world.ts';

/** Takes one step of the mixing. Pure; intents that do not fit the step are refused, weighings are ignored. */
export function reduceMixing(mixing: Mixing, event: MixingEvent, world: MixingWorld): MixingOutcome {
  switch (event.type) {
    case 'start':
      return start(mixing, event.packetId, world);
    case 'lot':
      return chooseLot(mixing, event.lotId, world);
    case 'amount':
      return chooseAmount(mixing, event.amount, world);
    case 'mode':
      return chooseMode(mixing, event.mode, world);
    case 'look':
      return lookAtDilution(mixing, event.perPacketMl, world);
    case 'dilution':
      return chooseDilution(mixing, event.perPacketMl, event.deliberate, world);
    case 'water-temperature':
      return chooseWater(mixing, event.celsius, world);
    case 'jug-placed':
      return placeJug(mixing, world);
    case 'jug-is-empty':
      return learnJug(mixing, event.vesselId, event.deliberate, world);
    case 'poured':
      return finishPour(mixing, event.deliberate, world);
    case 'powder-in':
      return finishPowder(mixing, event.deliberate, world);
    case 'weighed':
      return weigh(mixing, world);
    case 'dissolved':
      return dissolve(mixing, world);
    case 'in-service':
      if (mixing.step !== 'label') return refuse(mixing, 'wrong-state');
      return { mixing, effects: [{ do: 'store-jug', jug: mixing.jug }], refused: null };
    case 'stored':
      return mixing.step === 'label' ? go(IDLE_MIXING) : go(mixing);
    case 'cancel':
      return cancel(mixing, world);
    default:
      return unreachable(event);
  }
}

function weigh(mixing: Mixing, world: MixingWorld): MixingOutcome {
  if (mixing.step === 'pour') return followPour(mixing, world);
  if (mixing.step === 'powder' || mixing.step === 'dissolve') return weighPowder(mixing, world);
  return go(mixing);
}

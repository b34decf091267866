import { packetById } from '../medicine/formulary.ts';
import { scoreDilution } from '../mixing/dilution-score.ts';
import { whyNotDiluted } from '../mixing/dilutions.ts';
import { type MixMode, ONE_PACKET, type PowderAmount, planMix } from '../mixing/plan.ts';
import { scoreDilutions } from '../mixing/recommend.ts';
import { celsius } from '../quantity/temperature.ts';
import { millilitres } from '../quantity/volume.ts';
import { freshnessOf } from '../stock/expiry.ts';
import { lotsOf } from '../stock/propose.ts';
import type { Mixing, MixingAt, MixingOutcome } from './state.ts';
import { go, type MixingWorld, refuse } from './world.ts';

/** The most packets that go into one jug (our own guard). */
export const MOST_PACKETS = 4;
/** The shares of a packet that may be weighed in. */
export const PARTS = [0.25, 0.5, 0.75] as const;

/** Begins with a packet: the stock, where it holds any, is asked for its lot first. */
export function start(mixing: Mixing, packetId: string, world: MixingWorld): MixingOutcome {
  if (mixing.step !== 'idle') return refuse(mixing, 'wrong-state');
  if (packetById(world.formulary, packetId) === undefined) return refuse(mixing, 'no-such-packet');
  if (lotsOf(world.stock, packetId).length > 0) return go({ step: 'lot', packetId });
  return choose(mixing, { packetId, lotId: null, amount: ONE_PACKET, mode: 'make-up-to' }, world);
}

/** Takes the lot the packet in the hand is of, unless its month is over: a label says not to use it after. */
export function chooseLot(mixing: Mixing, lotId: string | null, world: MixingWorld): MixingOutcome {
  if (mixing.step !== 'lot') return refuse(mixing, 'wrong-state');
  const { packetId } = mixing;
  const lot = world.stock.find(({ id }) => id === lotId);
  if (lotId !== null && lot?.presentationId !== packetId) return refuse(mixing, 'no-such-lot');
  if (lot !== undefined && world.clockTrusted && freshnessOf(lot, world.now.wallMs) === 'expired')
    return refuse(mixing, 'lot-expired');
  return choose(mixing, { packetId, lotId, amount: ONE_PACKET, mode: 'make-up-to' }, world);
}

/** Takes another amount of powder; the volume goes with it. */
export function chooseAmount(mixing: Mixing, amount: PowderAmount, world: MixingWorld): MixingOutcome {
  if (mixing.step !== 'dilution') return refuse(mixing, 'wrong-state');
  const possible =
    amount.kind === 'packets'
      ? Number.isInteger(amount.count) && amount.count >= 1 && amount.count <= MOST_PACKETS
      : PARTS.some((part) => part === amount.share);
  if (!possible) return refuse(mixing, 'no-such-amount');
  return choose(mixing, { ...mixing, amount }, world);
}

/** Takes the packet's own words: made up to a volume, or added to it. */
export function chooseMode(mixing: Mixing, mode: MixMode, world: MixingWorld): MixingOutcome {
  if (mixing.step !== 'dilution') return refuse(mixing, 'wrong-state');
  return choose(mixing, { ...mixing, mode }, world);
}

function choose(
  mixing: Mixing,
  { packetId, lotId, amount, mode }: Pick<MixingAt<'dilution'>, 'packetId' | 'lotId' | 'amount' | 'mode'>,
  world: MixingWorld,
): MixingOutcome {
  const found = packetById(world.formulary, packetId);
  if (found === undefined) return refuse(mixing, 'no-such-packet');
  const { animals, syringes, approvals } = world;
  const scores = scoreDilutions({ ...found, amount, mode, animals, syringes, approvals });
  return go({ step: 'dilution', packetId, lotId, amount, mode, scores, own: null });
}

/** Works out a volume of the keeper's own for each packet, unless nothing says that it dissolves or measures. */
export function lookAtDilution(mixing: Mixing, perPacketMl: number, world: MixingWorld): MixingOutcome {
  if (mixing.step !== 'dilution') return refuse(mixing, 'wrong-state');
  const { packetId, amount, mode } = mixing;
  const found = packetById(world.formulary, packetId);
  if (found === undefined) return refuse(mixing, 'no-such-packet');
  const perPacket = millilitres(perPacketMl);
  const why = whyNotDiluted(found.medicine.id, found.packet, { perPacket, mode });
  if (why !== null && why !== 'far-from-label') return refuse(mixing, why);
  const { animals, syringes, approvals } = world;
  const task = { ...found, amount, mode, animals, syringes, approvals };
  const score = scoreDilution(task, { perPacket, origin: 'entered', source: 'Entered at the screen' });
  return go({ ...mixing, own: { score, far: why !== null } });
}

/** Takes a volume for each packet, unless nothing says that so much powder dissolves in it. */
export function chooseDilution(
  mixing: Mixing,
  perPacketMl: number,
  deliberate: boolean,
  world: MixingWorld,
): MixingOutcome {
  if (mixing.step !== 'dilution') return refuse(mixing, 'wrong-state');
  const { packetId, lotId, amount, mode } = mixing;
  const found = packetById(world.formulary, packetId);
  if (found === undefined) return refuse(mixing, 'no-such-packet');
  const why = whyNotDiluted(found.medicine.id, found.packet, { perPacket: millilitres(perPacketMl), mode });
  if (why !== null && !(why === 'far-from-label' && deliberate)) return refuse(mixing, why);
  return go({ step: 'water', packetId, lotId, amount, mode, perPacketMl });
}

/**
 * Takes the water's temperature, and with it all that the plan needs.
 *
 * Told while the volume is still open, it takes the volume the packet is sold for.
 */
export function chooseWater(mixing: Mixing, degrees: number, world: MixingWorld): MixingOutcome {
  if (mixing.step !== 'water' && mixing.step !== 'dilution') return refuse(mixing, 'wrong-state');
  if (!(degrees >= 1 && degrees <= 40)) return refuse(mixing, 'temperature-out-of-range');
  const found = packetById(world.formulary, mixing.packetId);
  if (found === undefined) return refuse(mixing, 'no-such-packet');
  const perPacketMl = mixing.step === 'water' ? mixing.perPacketMl : found.packet.madeUpToMl.value;
  const recipe = { perPacket: millilitres(perPacketMl), mode: mixing.mode };
  const plan = planMix(
    found.medicine.id,
    found.packet,
    recipe,
    mixing.amount,
    celsius(degrees),
    mixing.lotId,
  );
  return go({ step: 'place', plan });
}

import { packetById } from '../medicine/formulary.ts';
import type { Packet } from '../medicine/presentation.ts';
import type { MixPlan } from '../mixing/plan.ts';
import type { Mass } from '../quantity/mass.ts';
import { type Pieces, pieces } from '../stock/pieces.ts';
import type { Mixing, MixingOutcome } from './state.ts';
import { go, IDLE_MIXING, type MixingWorld, refuse } from './world.ts';

/** How many packets are in the water: whole ones as they are printed, of a part what the scale saw. */
export function packetsUsed({ amount }: MixPlan, seen: Mass, packet: Packet): Pieces {
  return pieces(amount.kind === 'packets' ? amount.count : seen.value / packet.grossGrams.value);
}

/** Gives a mix up. Powder that is in the water by then is gone from the stock. */
export function cancel(mixing: Mixing, world: MixingWorld): MixingOutcome {
  if (mixing.step === 'idle') return refuse(mixing, 'wrong-state');
  const used = usedUp(mixing, world);
  if (used === null || used.pieces.value === 0) return go(IDLE_MIXING);
  return { mixing: IDLE_MIXING, effects: [{ do: 'take-stock', ...used }], refused: null };
}

function usedUp(mixing: Mixing, world: MixingWorld): { lotId: string; pieces: Pieces } | null {
  if (mixing.step === 'label') {
    const { stock } = mixing.jug;
    return stock === null ? null : { lotId: stock.lotId, pieces: stock.pieces };
  }
  if (mixing.step !== 'powder' && mixing.step !== 'dissolve') return null;
  const { plan, seen } = mixing;
  const found = packetById(world.formulary, plan.packetId);
  if (plan.lotId === null || found === undefined) return null;
  if (mixing.step === 'dissolve') return { lotId: plan.lotId, pieces: packetsUsed(plan, seen, found.packet) };
  const isIn = mixing.verdict === 'whole' || mixing.verdict === 'part' || mixing.verdict === 'too-much';
  if (!isIn) return null;
  return { lotId: plan.lotId, pieces: pieces(Math.max(0, seen.value) / found.packet.grossGrams.value) };
}

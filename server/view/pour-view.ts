import { FAR_FROM_PLAN } from '../../core/jug/pouring.ts';
import type { MixingAt } from '../../core/jug/state.ts';
import { type Formulary, packetById } from '../../core/medicine/formulary.ts';
import { achievedStrength } from '../../core/mixing/achieved.ts';
import { guidePour } from '../../core/mixing/pour.ts';
import { grams, type Mass } from '../../core/quantity/mass.ts';
import { subtract } from '../../core/quantity/quantity.ts';
import type { PourView } from '../../shared/mixing.ts';
import type { Memory } from '../barn/memory.ts';

/** A live pour as the wire carries it: what is in the jug, what to do, and whether the jug is where it was. */
export function pourView(mixing: MixingAt<'pour'>, { bench, formulary }: Memory): PourView {
  const { plan, band, jugMass, watch } = mixing;
  const water = bench.live === null || bench.net ? null : subtract(bench.live, jugMass);
  const stands = watch.place === 'on';
  const advice = ((): PourView['advice'] => {
    if (bench.net) return 'scale-tared';
    if (watch.place === 'moved') return 'scale-moved';
    if (water !== null && !stands) return 'jug-lifted';
    return guidePour(water ?? grams(0), plan.water, band).advice;
  })();
  return {
    advice,
    nowGrams: water?.value ?? null,
    targetGrams: plan.water.value,
    bandGrams: band.value,
    steady: bench.steady !== null && stands,
    farStrengthMgPerMl: water === null || !stands ? null : farStrength(mixing, water, formulary),
  };
}

function farStrength({ plan }: MixingAt<'pour'>, water: Mass, formulary: Formulary): number | null {
  const found = packetById(formulary, plan.packetId);
  if (found === undefined || water.value < plan.water.value) return null;
  const now = { mass: water, uncertainty: grams(0), temperature: plan.temperature };
  const { strength } = achievedStrength(found.packet, plan.powder, now);
  return strength.value < (1 - FAR_FROM_PLAN) * plan.strength.value ? strength.value : null;
}

import type { Mixing } from '../../core/jug/state.ts';
import { type Formulary, medicineById } from '../../core/medicine/formulary.ts';
import { type Jug, jugLife, remaining } from '../../core/mixing/jug.ts';
import type { MixPlan } from '../../core/mixing/plan.ts';
import { guidePour } from '../../core/mixing/pour.ts';
import { grams } from '../../core/quantity/mass.ts';
import { subtract } from '../../core/quantity/quantity.ts';
import { unreachable } from '../../core/unreachable.ts';
import type { Bench } from '../../core/weighing/bench.ts';
import type { JugView, MixingView, PlanView, PourView } from '../../shared/jug.ts';
import { rfc3339 } from './times.ts';

/** A jug as the wire carries it. */
export function jugView(jug: Jug, wallMs: number, formulary: Formulary): JugView {
  const medicine = medicineById(formulary, jug.medicineId);
  return {
    id: jug.id,
    number: jug.number,
    medicine: medicine?.name ?? jug.medicineId,
    active: medicine?.active ?? jug.medicineId,
    strengthMgPerMl: jug.strength.value,
    strengthUncertainty: jug.relative,
    volumeMl: jug.volume.value,
    remainingMl: remaining(jug).value,
    mixedAt: rfc3339(jug.mixedAtMs),
    useBy: rfc3339(jug.useByMs),
    by: jug.by,
    life: jugLife(jug, wallMs),
  };
}

function planView(plan: MixPlan, formulary: Formulary): PlanView {
  return {
    medicine: medicineById(formulary, plan.medicineId)?.name ?? plan.medicineId,
    packetId: plan.packetId,
    mode: plan.mode,
    celsius: plan.temperature.value,
    finalVolumeMl: plan.finalVolume.value,
    powderVolumeMl: plan.powderVolume.value,
    waterGrams: plan.water.value,
    powderGrams: plan.powder.value,
    strengthMgPerMl: plan.strength.value,
  };
}

function pourView(mixing: Extract<Mixing, { step: 'pour' }>, bench: Bench): PourView {
  const division = bench.division ?? grams(1);
  const current = bench.live === null || bench.net !== mixing.net ? null : bench.live;
  const water = current === null ? grams(0) : subtract(current, mixing.jugMass);
  const status = guidePour(water, mixing.plan.water, division);
  return {
    advice: status.advice,
    nowGrams: current === null ? null : status.water.value,
    targetGrams: mixing.plan.water.value,
    bandGrams: status.band.value,
    steady: bench.steady !== null,
  };
}

/** The jug being mixed as the wire carries it, with what the bench shows now. */
export function mixingView(mixing: Mixing, bench: Bench, wallMs: number, formulary: Formulary): MixingView {
  switch (mixing.step) {
    case 'idle':
      return { step: 'idle' };
    case 'water':
      return { step: 'water', packetId: mixing.packetId };
    case 'place':
      return {
        step: 'place',
        plan: planView(mixing.plan, formulary),
        nowGrams: bench.live?.value ?? null,
        steady: bench.steady !== null,
      };
    case 'pour':
      return { step: 'pour', plan: planView(mixing.plan, formulary), pour: pourView(mixing, bench) };
    case 'powder':
      return {
        step: 'powder',
        plan: planView(mixing.plan, formulary),
        riseGrams:
          bench.live === null || bench.net !== mixing.net
            ? null
            : bench.live.value - mixing.jugMass.value - mixing.water.mass.value,
        verdict: mixing.verdict,
        strengthMgPerMl: mixing.achieved.strength.value,
      };
    case 'dissolve':
      return {
        step: 'dissolve',
        plan: planView(mixing.plan, formulary),
        strengthMgPerMl: mixing.achieved.strength.value,
      };
    case 'label':
      return {
        step: 'label',
        jug: jugView(mixing.jug, wallMs, formulary),
        handling: (medicineById(formulary, mixing.jug.medicineId)?.handling ?? []).map(({ text }) => text),
      };
    default:
      return unreachable(mixing);
  }
}

import { FAR_FROM_PLAN } from '../../core/jug/pouring.ts';
import type { MixingAt } from '../../core/jug/state.ts';
import { medicineById, packetById } from '../../core/medicine/formulary.ts';
import type { DilutionScore } from '../../core/mixing/dilution-score.ts';
import { type MixPlan, packetsIn } from '../../core/mixing/plan.ts';
import { type DilutionReason, reasonBetween } from '../../core/mixing/recommend.ts';
import { matchVessel, type Vessel, type VesselDoubt } from '../../core/mixing/vessel.ts';
import { unreachable } from '../../core/unreachable.ts';
import type { Bench } from '../../core/weighing/bench.ts';
import type { DilutionView, MixingView, PlanView, VesselDoubtView, VesselView } from '../../shared/mixing.ts';
import type { Memory } from '../barn/memory.ts';
import { jugView } from './jug-view.ts';
import { pourView } from './pour-view.ts';

function planView(plan: MixPlan, { formulary }: Memory): PlanView {
  return {
    medicine: medicineById(formulary, plan.medicineId)?.name ?? plan.medicineId,
    packetId: plan.packetId,
    mode: plan.recipe.mode,
    amount: plan.amount,
    celsius: plan.temperature.value,
    namedVolumeMl: plan.namedVolume.value,
    finalVolumeMl: plan.finalVolume.value,
    powderVolumeMl: plan.powderVolume.value,
    waterGrams: plan.water.value,
    powderGrams: plan.powder.value,
    strengthMgPerMl: plan.strength.value,
  };
}

/** A choice with what speaks for it: the first one against its runner-up, each other one against the first. */
function dilutionView(score: DilutionScore, packets: number, reason: DilutionReason | null): DilutionView {
  const { dilution } = score;
  return {
    perPacketMl: dilution.perPacket.value,
    namedMl: packets * dilution.perPacket.value,
    jugMl: score.jugVolume.value,
    strengthMgPerMl: score.strength.value,
    origin: dilution.origin,
    source: dilution.source,
    animals: score.animals,
    guessed: score.guessed,
    measurable: score.measurable,
    crossing: score.crossing,
    worst: score.worst,
    draws: score.draws,
    neededMl: score.needed.value,
    jugs: score.jugs,
    reason,
  };
}

function vesselView({ id, letter, empty }: Vessel): VesselView {
  return { id, letter, emptyGrams: empty.value };
}

function doubtView(doubt: VesselDoubt, { jugs }: Memory): VesselDoubtView {
  switch (doubt.kind) {
    case 'first':
      return { kind: 'first' };
    case 'holds-mix':
      return { kind: 'holds-mix', number: jugs.find(({ id }) => id === doubt.jugId)?.number ?? 0 };
    default:
      return { kind: doubt.kind, than: vesselView(doubt.than), byGrams: doubt.by.value };
  }
}

function placeView({ plan }: MixingAt<'place'>, memory: Memory, wallMs: number): MixingView {
  const { bench, vessels, jugs } = memory;
  const { steady, uncertainty } = bench;
  const match =
    steady === null || uncertainty === null || bench.net
      ? null
      : matchVessel(steady, uncertainty, vessels, jugs, wallMs);
  return {
    step: 'place',
    plan: planView(plan, memory),
    ...onBench(bench),
    vessels: knownVessels(vessels),
    standsLike: match?.known === true ? match.vessel.letter : null,
  };
}

function onBench(bench: Bench) {
  return { nowGrams: bench.live?.value ?? null, steady: bench.steady !== null };
}

function knownVessels(vessels: readonly Vessel[]): VesselView[] {
  return vessels.filter(({ retiredAtMs }) => retiredAtMs === null).map(vesselView);
}

function powderView(mixing: MixingAt<'powder'>, memory: Memory): MixingView {
  const { bench } = memory;
  const { plan, jugMass, water, verdict, achieved } = mixing;
  const rise = bench.live === null || bench.net ? null : bench.live.value - jugMass.value - water.mass.value;
  const off = rise === null ? 0 : Math.abs(rise / plan.powder.value - 1);
  return {
    step: 'powder',
    plan: planView(plan, memory),
    riseGrams: rise,
    verdict,
    strengthMgPerMl: achieved.strength.value,
    farOff: plan.amount.kind === 'weighed' && off > FAR_FROM_PLAN,
  };
}

/** The jug being mixed as the wire carries it, with what the bench shows now. */
export function mixingView(memory: Memory, wallMs: number): MixingView {
  const { mixing, bench, formulary } = memory;
  switch (mixing.step) {
    case 'idle':
      return { step: 'idle' };
    case 'lot':
      return {
        step: 'lot',
        packetId: mixing.packetId,
        medicine: packetById(formulary, mixing.packetId)?.medicine.name ?? mixing.packetId,
      };
    case 'dilution':
      return dilutionsView(mixing, memory);
    case 'water':
      return { step: 'water', packetId: mixing.packetId };
    case 'place':
      return placeView(mixing, memory, wallMs);
    case 'new-jug':
      return {
        step: 'new-jug',
        plan: planView(mixing.plan, memory),
        ...onBench(bench),
        doubt: doubtView(mixing.doubt, memory),
        letter: mixing.letter,
        vessels: knownVessels(memory.vessels),
      };
    case 'pour':
      return {
        step: 'pour',
        plan: planView(mixing.plan, memory),
        letter: mixing.vessel.letter,
        pour: pourView(mixing, memory),
      };
    case 'powder':
      return powderView(mixing, memory);
    case 'dissolve': {
      const { plan, achieved } = mixing;
      return { step: 'dissolve', plan: planView(plan, memory), strengthMgPerMl: achieved.strength.value };
    }
    case 'label': {
      const medicine = medicineById(formulary, mixing.jug.medicineId);
      return {
        step: 'label',
        jug: jugView(mixing.jug, wallMs, formulary),
        handling: (medicine?.handling ?? []).map(({ text }) => text),
      };
    }
    default:
      return unreachable(mixing);
  }
}

function dilutionsView(
  { packetId, amount, mode, scores, own }: MixingAt<'dilution'>,
  { formulary }: Memory,
): MixingView {
  const found = packetById(formulary, packetId);
  const [best, second] = scores;
  const reasonOf = (score: DilutionScore): DilutionReason | null => {
    const other = score === best ? second : score;
    if (found === undefined || best === undefined || other === undefined) return null;
    return reasonBetween(best, other, found.packet);
  };
  return {
    step: 'dilution',
    packetId,
    medicine: found?.medicine.name ?? packetId,
    amount,
    mode,
    choices: scores.map((score) => dilutionView(score, packetsIn(amount), reasonOf(score))),
    own:
      own === null
        ? null
        : { choice: dilutionView(own.score, packetsIn(amount), reasonOf(own.score)), far: own.far },
  };
}

import { ruleFor } from '../dosing/decide.ts';
import { type Dose, doseFor } from '../dosing/dose.ts';
import type { Syringe } from '../dosing/syringe.ts';
import type { Animal } from '../herd/animal.ts';
import { classBand } from '../herd/class-band.ts';
import type { Approval } from '../medicine/approval.ts';
import { regimensFor } from '../medicine/formulary.ts';
import { type RegimenInForce, regimenInForce } from '../medicine/in-force.ts';
import type { Medicine } from '../medicine/medicine.ts';
import type { Packet } from '../medicine/presentation.ts';
import { grams, type Mass } from '../quantity/mass.ts';
import type { Strength } from '../quantity/strength.ts';
import { celsius } from '../quantity/temperature.ts';
import { millilitres, type Volume } from '../quantity/volume.ts';
import { doubtAhead } from './band.ts';
import type { Dilution } from './dilutions.ts';
import { type MixMode, type PowderAmount, planMix } from './plan.ts';

/** What is to be mixed, for whom, and what it can be measured with. */
export interface DilutionTask {
  readonly medicine: Medicine;
  readonly packet: Packet;
  readonly amount: PowderAmount;
  readonly mode: MixMode;
  readonly animals: readonly Animal[];
  readonly approvals: readonly Approval[];
  readonly syringes: readonly Syringe[];
}

/** How a dilution would serve the herd, in numbers. */
export interface DilutionScore {
  readonly dilution: Dilution;
  readonly strength: Strength;
  /** What the jug would hold. */
  readonly jugVolume: Volume;
  /** Animals that have a rule for this medicine. */
  readonly animals: number;
  /** Those of them never weighed, taken at both ends of the band of their class. */
  readonly guessed: number;
  /** Those whose dose a syringe on hand measures within 10 %. */
  readonly measurable: number;
  /** Those whose interval (k = 2) passes the ceiling. */
  readonly crossing: number;
  /** The widest half-interval (k = 2) as a share of the target, rounding included; `null` where nothing is measurable. */
  readonly worst: number | null;
  /** Draws for each measurable animal, on average. */
  readonly draws: number;
  /** What the whole herd would take. */
  readonly needed: Volume;
  /** Jugs that would be mixed for it. */
  readonly jugs: number;
}

/** How well a weight on the platform is usually known (k = 1), as a share: half of its 1 % at the 95th percentile. */
const USUAL_DOUBT = 0.005;
/** The doubt of the mix is taken for water of this temperature, an empty jug of so many grams, a scale of 1 g. */
const USUAL = { water: celsius(15), jug: grams(300), division: grams(1) };

interface Served {
  readonly guessed: boolean;
  readonly doses: readonly (Dose | null)[];
  readonly regimen: RegimenInForce;
  readonly needMl: number;
}

/** Works out every dose of the herd at one dilution. */
export function scoreDilution(task: DilutionTask, dilution: Dilution): DilutionScore {
  const { medicine, packet, amount, mode, animals } = task;
  const recipe = { perPacket: dilution.perPacket, mode };
  const plan = planMix(medicine.id, packet, recipe, amount, USUAL.water);
  const jug = { strength: plan.strength, relative: doubtAhead(plan, packet, USUAL.jug, USUAL.division) };
  const served = animals.flatMap((animal): Served[] => {
    const regimen = ruleOf(task, animal);
    return regimen === null ? [] : [serve(animal, regimen, jug, task.syringes)];
  });
  const measured = served.filter(({ doses }) => doses.every((dose) => dose !== null));
  const spans = measured.flatMap(({ doses, regimen }) => doses.map((dose) => spanOf(dose, regimen)));
  const draws = measured.map(({ doses }) => Math.max(...doses.map((dose) => dose?.plan.draws.length ?? 0)));
  const neededMl = served.reduce((sum, { needMl }) => sum + needMl, 0);
  return {
    dilution,
    strength: plan.strength,
    jugVolume: plan.finalVolume,
    animals: served.length,
    guessed: served.filter(({ guessed }) => guessed).length,
    measurable: measured.length,
    crossing: measured.filter(({ doses, regimen }) =>
      doses.some((dose) => (dose?.delivered.high ?? 0) > regimen.ceiling.value),
    ).length,
    worst: spans.length === 0 ? null : Math.max(...spans),
    draws: draws.length === 0 ? 0 : draws.reduce((sum, count) => sum + count, 0) / draws.length,
    needed: millilitres(neededMl),
    jugs: Math.max(1, Math.ceil(neededMl / plan.finalVolume.value)),
  };
}

/** The rule an animal would be dosed by, approved or not yet; `null` where there is none or its rate is not known. */
function ruleOf({ medicine, packet, approvals }: DilutionTask, { species }: Animal): RegimenInForce | null {
  const rules = regimensFor(medicine, species).filter(
    ({ presentationIds }) => presentationIds?.includes(packet.id) ?? true,
  );
  const { rule, approval } = ruleFor(rules, approvals);
  return rule === null ? null : regimenInForce(rule, approval);
}

function serve(
  animal: Animal,
  regimen: RegimenInForce,
  jug: { readonly strength: Strength; readonly relative: number },
  syringes: readonly Syringe[],
): Served {
  const known = animal.lastWeight?.mass;
  const weights: readonly Mass[] = known === undefined ? classBand(animal.species, animal.class) : [known];
  const doses = weights.map((mass) => {
    const held = { mass, uncertainty: grams(USUAL_DOUBT * mass.value), at: 0, changedFrom: null };
    return doseFor(held, regimen, jug, syringes);
  });
  const meanKg = weights.reduce((sum, mass) => sum + mass.value, 0) / weights.length / 1000;
  const needMl = (meanKg * regimen.target.value) / jug.strength.value;
  return { guessed: known === undefined, doses, regimen, needMl };
}

/** How far a dose may be off its target at most, as a share of the target. */
function spanOf(dose: Dose | null, regimen: RegimenInForce): number {
  if (dose === null) return 1;
  const target = regimen.target.value;
  return Math.max(dose.delivered.high - target, target - dose.delivered.low) / target;
}

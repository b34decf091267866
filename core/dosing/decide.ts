import type { ScaleChecking } from '../checking/standing.ts';
import type { Animal } from '../herd/animal.ts';
import { type Approval, approves } from '../medicine/approval.ts';
import { type Formulary, medicineById, regimensFor } from '../medicine/formulary.ts';
import { type RegimenInForce, regimenInForce } from '../medicine/in-force.ts';
import type { Regimen } from '../medicine/regimen.ts';
import type { Jug } from '../mixing/jug.ts';
import type { Moment } from '../moment.ts';
import type { Proven } from '../reduction/proven.ts';
import type { Held } from '../weighing/settle.ts';
import { type Caution, cautionsFor, type VisitDoubts } from './cautions.ts';
import { type Dose, doseFor, topUpFor } from './dose.ts';
import { type EarlierDose, restDue } from './repeats.ts';
import type { Syringe } from './syringe.ts';

/** What is known of the farm when a dose is decided. */
export interface DoseWorld {
  readonly formulary: Formulary;
  readonly approvals: readonly Approval[];
  readonly syringes: readonly Syringe[];
  /** Earlier doses of the whole herd in the order they were given, as they stand after corrections. */
  readonly earlier: readonly EarlierDose[];
  /** The checks of the platform. */
  readonly scale: ScaleChecking;
  /** What reduction tests told of medicines here. */
  readonly proven: readonly Proven[];
  readonly now: Pick<Moment, 'wallMs' | 'board'>;
  readonly clockTrusted: boolean;
  /** Whether the disk takes records. */
  readonly diskKeeps: boolean;
}

/** A dose with everything that speaks for and against it. */
export interface Decision {
  readonly regimen: RegimenInForce | null;
  readonly approval: Approval | null;
  readonly dose: Dose | null;
  readonly cautions: readonly Caution[];
}

/** The rule a dose would follow: the approved one, or the first there is so that it can be named. */
export function ruleFor(
  rules: readonly Regimen[],
  approvals: readonly Approval[],
): { rule: Regimen | null; approval: Approval | null } {
  for (const rule of rules) {
    const approval = approvals.find((candidate) => approves(candidate, rule));
    if (approval !== undefined) return { rule, approval };
  }
  return { rule: rules[0] ?? null, approval: null };
}

/** The doses of one animal. A loop without a closure: a kiosk just started walks the herd's past in code not yet compiled. */
function dosesOf(earlier: readonly EarlierDose[], animalId: string): EarlierDose[] {
  const found: EarlierDose[] = [];
  for (const dose of earlier) if (dose.animalId === animalId) found.push(dose);
  return found;
}

/** Decides the dose of one animal at one held weight from one jug; it never offers, it only judges. */
export function decideDose(
  animal: Animal,
  weight: Held,
  jug: Jug,
  visit: VisitDoubts,
  world: DoseWorld,
): Decision {
  const medicine = medicineById(world.formulary, jug.medicineId);
  const ofSpecies = medicine === undefined ? [] : regimensFor(medicine, animal.species);
  const rules = ofSpecies.filter(({ presentationIds }) => presentationIds?.includes(jug.packetId) ?? true);
  const { rule, approval } = ruleFor(rules, world.approvals);
  const regimen = rule === null ? null : regimenInForce(rule, approval);
  const { formulary, clockTrusted, syringes } = world;
  const { wallMs, board } = world.now;
  const earlier = dosesOf(world.earlier, animal.id);
  const rest = restDue({ formulary, jug, regimen, earlier, wallMs, board, clockTrusted });
  const dose =
    regimen === null
      ? null
      : rest === null
        ? doseFor(weight, regimen, jug, syringes)
        : topUpFor(rest.active, weight, jug, syringes);
  const cautions = cautionsFor({
    animal,
    weight,
    jug,
    formulary,
    covered: rule !== null ? 'yes' : ofSpecies.length > 0 ? 'other-presentation' : 'no',
    regimen,
    approval,
    dose,
    earlier,
    rest,
    visit,
    scale: world.scale,
    wallMs,
    board,
    clockTrusted,
    diskKeeps: world.diskKeeps,
    proven: world.proven,
  });
  return { regimen, approval, dose, cautions };
}

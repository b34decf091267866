import type { ScaleChecking } from '../checking/standing.ts';
import type { Animal } from '../herd/animal.ts';
import type { Approval } from '../medicine/approval.ts';
import type { Regimen } from '../medicine/formulary.ts';
import { regimenFor } from '../medicine/formulary.ts';
import { medicineById } from '../medicine/medicines.ts';
import type { Jug } from '../mixing/jug.ts';
import type { Moment } from '../moment.ts';
import type { Held } from '../weighing/settle.ts';
import { type Caution, cautionsFor, type EarlierDose, type VisitDoubts } from './cautions.ts';
import { type Dose, doseFor } from './dose.ts';
import type { Syringe } from './syringe.ts';

/** What is known of the farm when a dose is decided. */
export interface DoseWorld {
  readonly approvals: readonly Approval[];
  readonly syringes: readonly Syringe[];
  /** Earlier doses of the whole herd in the order they were given, as they stand after corrections. */
  readonly earlier: readonly EarlierDose[];
  /** The checks of the platform. */
  readonly scale: ScaleChecking;
  readonly now: Pick<Moment, 'wallMs'>;
  readonly clockTrusted: boolean;
}

/** A dose with everything that speaks for and against it. */
export interface Decision {
  readonly regimen: Regimen | null;
  readonly approval: Approval | null;
  readonly dose: Dose | null;
  readonly cautions: readonly Caution[];
}

/** Decides the dose of one animal at one held weight from one jug; it never offers, it only judges. */
export function decideDose(
  animal: Animal,
  weight: Held,
  jug: Jug,
  visit: VisitDoubts,
  world: DoseWorld,
): Decision {
  const medicine = medicineById(jug.medicineId);
  const regimen = medicine === undefined ? null : (regimenFor(medicine, animal.species) ?? null);
  const approval = world.approvals.find((candidate) => candidate.regimenId === regimen?.id) ?? null;
  const dose = regimen === null ? null : doseFor(weight, regimen, jug, world.syringes);
  const cautions = cautionsFor({
    animal,
    weight,
    jug,
    regimen,
    approval,
    dose,
    earlier: world.earlier.filter((earlier) => earlier.animalId === animal.id),
    visit,
    scale: world.scale,
    wallMs: world.now.wallMs,
    clockTrusted: world.clockTrusted,
  });
  return { regimen, approval, dose, cautions };
}

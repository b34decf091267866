import { ruleFor } from '../dosing/decide.ts';
import type { Animal } from '../herd/animal.ts';
import { classBand } from '../herd/class-band.ts';
import type { Approval } from '../medicine/approval.ts';
import { regimensFor } from '../medicine/formulary.ts';
import { regimenInForce } from '../medicine/in-force.ts';
import type { Medicine } from '../medicine/medicine.ts';
import { grams } from '../quantity/mass.ts';
import { quantity } from '../quantity/quantity.ts';
import { type ActiveAmount, activeFor } from '../quantity/strength.ts';

/** What one treatment of this herd takes on average. */
export interface HeadNeed {
  readonly active: ActiveAmount;
  /** How many animals that is the mean of, and how many of them were never weighed and stand in by their class. */
  readonly animals: number;
  readonly guessed: number;
}

/** The mean dose of a presentation over the animals that have a rule for it; `null` where none has. */
export function headNeed(
  medicine: Medicine,
  presentationId: string,
  animals: readonly Animal[],
  approvals: readonly Approval[],
): HeadNeed | null {
  const needs = animals.flatMap(({ species, class: kind, lastWeight }) => {
    const rules = regimensFor(medicine, species).filter(
      ({ presentationIds }) => presentationIds?.includes(presentationId) ?? true,
    );
    const { rule, approval } = ruleFor(rules, approvals);
    const regimen = rule === null ? null : regimenInForce(rule, approval);
    if (regimen === null) return [];
    const [light, heavy] = classBand(species, kind);
    const mass = lastWeight?.mass ?? grams((light.value + heavy.value) / 2);
    const rate = quantity('mg/kg', regimen.target.value);
    return [{ mg: activeFor(mass, rate).value, guessed: lastWeight === null }];
  });
  if (needs.length === 0) return null;
  return {
    active: quantity('mg', needs.reduce((sum, { mg }) => sum + mg, 0) / needs.length),
    animals: needs.length,
    guessed: needs.filter(({ guessed }) => guessed).length,
  };
}

/** How many treatments an amount of active is enough for. */
export function headsIn(active: ActiveAmount, need: HeadNeed): number {
  return Math.floor(active.value / need.active.value + 1e-9);
}

import { needFor } from '../../core/dosing/need.ts';
import { approves } from '../../core/medicine/approval.ts';
import { medicineById } from '../../core/medicine/formulary.ts';
import { regimenInForce } from '../../core/medicine/in-force.ts';
import { USUAL_NEED } from '../../core/weighing/settle.ts';
import { type Memory, syringesOnHand } from './memory.ts';

/**
 * How well the weight on the deck must be known for the dose the jug in hand would give it, as a standard uncertainty
 * relative to it; the usual need with no jug in hand or nothing on the deck.
 */
export function needAtHand(memory: Memory): number {
  const { deck, jugs, animals } = memory;
  const { phase } = memory.round;
  if (deck.level === null || deck.division === null || phase.step === 'no-jug') return USUAL_NEED;
  const jug = jugs.find(({ id }) => id === phase.jugId);
  const medicine = jug === undefined ? undefined : medicineById(memory.formulary, jug.medicineId);
  if (jug === undefined || medicine === undefined) return USUAL_NEED;
  const who = 'visit' in phase ? (phase.visit?.who ?? null) : null;
  const animal = animals.find(({ id }) => id === who?.animalId);
  const rules = medicine.regimens.flatMap((rule) => {
    const approval = memory.approvals.find((candidate) => approves(candidate, rule)) ?? null;
    return regimenInForce(rule, approval) ?? [];
  });
  const ruled = rules.filter(({ species }) => species === animal?.species);
  return needFor({
    weight: { unit: 'g', value: deck.level.grams },
    division: deck.division,
    regimens: ruled.length > 0 ? ruled : rules,
    jug,
    syringes: syringesOnHand(memory),
  });
}

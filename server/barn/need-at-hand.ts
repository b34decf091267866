import { needFor } from '../../core/dosing/need.ts';
import { medicineById } from '../../core/medicine/medicines.ts';
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
  const medicine = jug === undefined ? undefined : medicineById(jug.medicineId);
  if (jug === undefined || medicine === undefined) return USUAL_NEED;
  const who = 'visit' in phase ? phase.visit.who : null;
  const animal = animals.find(({ id }) => id === who?.animalId);
  const ruled = medicine.regimens.filter(({ species }) => species === animal?.species);
  return needFor({
    weight: { unit: 'g', value: deck.level.grams },
    division: deck.division,
    regimens: ruled.length > 0 ? ruled : medicine.regimens,
    jug,
    syringes: syringesOnHand(memory),
  });
}

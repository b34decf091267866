import type { CautionInput } from '../../../core/dosing/cautions.ts';
import { doseFor } from '../../../core/dosing/dose.ts';
import { SYRINGE_CATALOGUE } from '../../../core/dosing/syringe.ts';
import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { makeAnimal } from './animal.ts';
import { makeApproval } from './approval.ts';
import { makeHeld } from './held.ts';
import { makeJug } from './jug.ts';
import { makeRegimen } from './regimen.ts';
import { CHECKED } from './scale-check.ts';
import { NINE_OCLOCK } from './time.ts';

/** A visit with nothing doubtful about it. */
export const NO_DOUBTS = { unanswered: false, namedLate: false } as const;

/** Anna at 40 kg with everything in order: nothing but the note that goats are extra-label. */
export function makeCautionInput(over: Partial<CautionInput> = {}): CautionInput {
  const weight = over.weight ?? makeHeld();
  const jug = over.jug ?? makeJug();
  const regimen = over.regimen === undefined ? makeRegimen() : over.regimen;
  return {
    animal: makeAnimal(),
    weight,
    jug,
    formulary: SHIPPED,
    covered: regimen === null ? 'no' : 'yes',
    regimen,
    approval: makeApproval(),
    dose: regimen === null ? null : doseFor(weight, regimen, jug, SYRINGE_CATALOGUE),
    earlier: [],
    rest: null,
    visit: NO_DOUBTS,
    scale: CHECKED,
    proven: [],
    wallMs: NINE_OCLOCK,
    clockTrusted: true,
    diskKeeps: true,
    ...over,
  };
}

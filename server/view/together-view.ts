import { medicineById } from '../../core/medicine/formulary.ts';
import { combinedEfficacy, survivors } from '../../core/reduction/combination.ts';
import type { TogetherView } from '../../shared/reduction-test.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import { provenNow } from '../worms/tests-now.ts';

/** Worms the arithmetic begins with. */
const THOUSAND = 1000;

/** For each species with two or more medicines tested: what they would come to, one after the other at the full dose each. */
export function togetherViews(barn: BarnContext): TogetherView[] {
  const proven = provenNow(barn);
  const species = [...new Set(proven.map((test) => test.species))];
  return species.flatMap((each) => {
    const parts = proven
      .filter((test) => test.species === each)
      .map(({ testId, medicineId, reduction }) => ({
        testId,
        medicine: medicineById(barn.memory.formulary, medicineId)?.name ?? medicineId,
        // More eggs after than before is no efficacy, and none below zero can be multiplied.
        efficacy: Math.max(0, reduction),
      }));
    if (parts.length < 2) return [];
    const efficacies = parts.map(({ efficacy }) => efficacy);
    return [
      {
        species: each,
        parts,
        together: combinedEfficacy(efficacies),
        leftOfThousand: survivors(THOUSAND, efficacies),
      },
    ];
  });
}

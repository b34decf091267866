import type { Formulary } from '../../core/medicine/formulary.ts';
import type { Presentation } from '../../core/medicine/presentation.ts';
import type { MedicineView, PresentationView } from '../../shared/own-medicine.ts';

/** Every medicine with what it is sold as; what was retired is left out. */
export function medicineViews(
  formulary: Formulary,
  own: ReadonlySet<string>,
  retired: ReadonlySet<string>,
): MedicineView[] {
  return formulary.map(({ id, name, presentations, regimens }) => ({
    id,
    name,
    presentations: presentations
      .filter((each) => !retired.has(each.id))
      .map((each) => presentationView(each, own.has(each.id))),
    ownRules: regimens.map((rule) => rule.id).filter((rule) => own.has(rule) && !retired.has(rule)),
  }));
}

function presentationView(presentation: Presentation, own: boolean): PresentationView {
  const { id, form } = presentation;
  if (form === 'liquid')
    return {
      id,
      form,
      grossGrams: null,
      activeGrams: null,
      strengthMgPerMl: presentation.strength.value,
      own,
    };
  const { grossGrams, activeGrams, madeUpToMl } = presentation;
  return {
    id,
    form,
    grossGrams: grossGrams.value,
    activeGrams: activeGrams.value,
    strengthMgPerMl: (1000 * activeGrams.value) / madeUpToMl.value,
    own,
  };
}

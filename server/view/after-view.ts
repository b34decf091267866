import { type Formulary, medicineById } from '../../core/medicine/formulary.ts';
import type { AfterDoseView } from '../../shared/after-dose.ts';

/** What to watch for and do after a dose of a medicine; `null` where the formulary says nothing of it. */
export function afterDoseView(medicineId: string, formulary: Formulary): AfterDoseView | null {
  const medicine = medicineById(formulary, medicineId);
  if (medicine === undefined) return null;
  const { watch, extras, refrigerate } = medicine;
  if (watch === null && extras.length === 0 && !refrigerate) return null;
  return {
    watch:
      watch === null
        ? null
        : {
            firstMinutes: watch.firstMinutes.value,
            lastMinutes: watch.lastMinutes.value,
            signs: watch.signs.text,
            remedy: watch.remedy.text,
            source: watch.signs.source,
          },
    extras: extras.map(({ line }) => line.text),
    refrigerate,
  };
}

import type { Animal } from '../../core/herd/animal.ts';
import { type Formulary, medicineById } from '../../core/medicine/formulary.ts';
import type { BookChoicesView, BookLineView } from '../../shared/day-book.ts';
import type { BookLine } from '../store/book-pages.ts';
import { treatmentView } from './dose-view.ts';
import { rfc3339 } from './times.ts';

/** A line of the day book as the wire carries it. */
export function bookLineView(line: BookLine, animals: readonly Animal[], formulary: Formulary): BookLineView {
  if (line.kind === 'treatment')
    return { line: 'treatment', treatment: treatmentView(line.entry, animals, formulary) };
  const { id, kind, animalId, reason, weightGrams, atMs, by, clockTrusted } = line.untreated;
  return {
    line: 'untreated',
    untreated: {
      id,
      kind,
      animal: animalId,
      animalName: animals.find((animal) => animal.id === animalId)?.name ?? null,
      reason,
      weightGrams,
      at: rfc3339(atMs),
      provisional: clockTrusted === false,
      by,
    },
  };
}

/** What the day book can be asked by, medicines by their names. */
export function bookChoicesView(
  { medicines, people }: { readonly medicines: readonly string[]; readonly people: readonly string[] },
  formulary: Formulary,
): BookChoicesView {
  return {
    medicines: medicines.map((id) => ({ id, name: medicineById(formulary, id)?.name ?? id })),
    people: [...people],
  };
}

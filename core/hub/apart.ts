import { stopMs } from '../dosing/repeats.ts';
import { type Formulary, sameActive } from '../medicine/formulary.ts';
import { type DayBookEntry, effectOf } from '../round/day-book.ts';

/** A treatment with the kiosk it was logged at. */
export interface Logged {
  readonly entry: DayBookEntry;
  /** `null` where nobody knows. */
  readonly kiosk: string | null;
}

/**
 * The treatments that an animal got twice because two kiosks did not know of each other's: of the same active, logged at
 * different kiosks, nearer to each other than a second dose is ever offered. A date that nobody trusts is taken at its word,
 * since a wrong alarm costs a look. Answers the ids of the others.
 */
export function dosedApart(one: Logged, others: readonly Logged[], formulary: Formulary): string[] {
  const { animalId } = effectOf(one.entry);
  if (animalId === null) return [];
  const { offer, givenAtMs } = one.entry.treatment;
  return others
    .filter(({ kiosk, entry }) => {
      const { treatment } = entry;
      if (kiosk === one.kiosk || effectOf(entry).animalId !== animalId) return false;
      if (!sameActive(formulary, treatment.offer.jug.medicineId, offer.jug.medicineId)) return false;
      const wait = Math.max(stopMs(offer.regimen), stopMs(treatment.offer.regimen));
      return Math.abs(treatment.givenAtMs - givenAtMs) < wait;
    })
    .map(({ entry }) => entry.treatment.id);
}

import type { TimeZone } from '../dosing/local-time.ts';
import type { Animal } from '../herd/animal.ts';
import { type Formulary, medicineById, presentationById } from '../medicine/formulary.ts';
import { type Hold, holdsOfOne } from '../round/clear-board.ts';
import { type DayBookEntry, effectOf, stoodOnPlatform } from '../round/day-book.ts';
import type { OutsideAnimal, TreatmentForExport } from './animal-data.ts';

/** What is looked up beside the day book for others. */
export interface ExchangeWorld {
  readonly formulary: Formulary;
  /** Every animal there is or was, by its id. */
  readonly animals: ReadonlyMap<string, Pick<Animal, 'id' | 'tag' | 'species'>>;
  readonly timeZone: TimeZone;
}

/** An animal as others know it: by its tag, or by the kiosk's id. */
export function outsideAnimal(id: string, { animals }: Pick<ExchangeWorld, 'animals'>): OutsideAnimal {
  return { id, tag: animals.get(id)?.tag ?? null };
}

/**
 * A row of the day book as a treatment for others, its corrections read: they get what really went into which animal. One
 * taken back is told as such. An end that is not known, or rests on a date nobody trusts, is left out.
 */
export function treatmentForExport(entry: DayBookEntry, world: ExchangeWorld): TreatmentForExport {
  const { treatment, corrections } = entry;
  const { offer } = treatment;
  const { jug, regimen } = offer;
  const { animalId, volumeMl } = effectOf(entry);
  const stood = stoodOnPlatform(entry);
  const { meat, milk } = holdsOfOne(entry, world.animals.get(stood)?.species ?? null, world.timeZone);
  const medicine = medicineById(world.formulary, jug.medicineId);
  const liquid = presentationById(world.formulary, jug.packetId)?.presentation.form === 'liquid';
  const outcome = treatment.outcome === 'whole' ? '' : `; ${treatment.outcome}`;
  return {
    id: treatment.id,
    atMs: treatment.givenAtMs,
    animal: outsideAnimal(stood, world),
    by: treatment.by,
    changedAtMs: corrections.at(-1)?.atMs ?? treatment.givenAtMs,
    takenBack: animalId === null,
    medicine: `${medicine?.active ?? jug.medicineId}, ${liquid ? 'as sold' : 'mixed on the farm'}`,
    millilitres: animalId === null ? offer.dose.plan.total.value : volumeMl,
    route: regimen.route,
    lot: jug.stock?.lot ?? null,
    expiresAtMs: jug.stock?.expiresAtMs ?? null,
    meatClearAtMs: endOf(meat),
    milkClearAtMs: endOf(milk),
    comment: `${jug.strength.value} mg/mL, jug ${jug.number}; ${regimen.target.value} mg/kg meant; ${offer.weight.held.mass.value / 1000} kg${outcome}`,
  };
}

function endOf({ clear, provisional }: Hold): number | null {
  return clear.kind === 'at' && !provisional ? clear.atMs : null;
}

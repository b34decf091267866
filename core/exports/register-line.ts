import type { TimeZone } from '../dosing/local-time.ts';
import type { Species } from '../herd/animal.ts';
import type { VetTime } from '../medicine/approval.ts';
import { type Formulary, medicineById, presentationById } from '../medicine/formulary.ts';
import type { Jug } from '../mixing/jug.ts';
import { DAY_MS } from '../moment.ts';
import { holdsOfOne } from '../round/clear-board.ts';
import { type DayBookEntry, effectOf } from '../round/day-book.ts';
import { type Correction, swallowed } from '../round/treatment.ts';
import { unreachable } from '../unreachable.ts';
import type { RegisterLine } from './register.ts';

/** An animal as the register names it. */
export interface RegisterAnimal {
  readonly name: string;
  readonly species: Species;
}

/** How corrections and who directed are written. */
export interface CorrectionWords {
  readonly notGiven: string;
  readonly wrongAnimal: (name: string) => string;
  readonly wrongVolume: (volumeMl: number) => string;
  readonly veterinarian: (meat: string, milk: string) => string;
  readonly time: (count: number, unit: VetTime['unit']) => string;
  readonly nothingSaid: string;
  /** A veterinarian whose name was not told. */
  readonly aVeterinarian: string;
}

/** As the tables have them. */
export const ENGLISH_CORRECTIONS: CorrectionWords = {
  notGiven: 'not given',
  wrongAnimal: (name) => `wrong animal: ${name}`,
  wrongVolume: (volumeMl) => `wrong volume: ${volumeMl} mL`,
  veterinarian: (meat, milk) => `veterinarian: meat ${meat}, milk ${milk}`,
  time: (count, unit) => `${count} ${unit}`,
  nothingSaid: 'nothing said',
  aVeterinarian: 'veterinarian',
};

/** What the register looks up beside the day book. */
export interface RegisterWorld {
  readonly formulary: Formulary;
  /** Every animal there is or was, by its id. */
  readonly animals: ReadonlyMap<string, RegisterAnimal>;
  readonly timeZone: TimeZone;
}

/**
 * A row of the day book as a line of the register: what was written when it was given, and beside it the corrections in
 * words. The clear times are those in force now, by the animal and volume that the corrections leave standing.
 *
 * Lot and printed month are those of the stock the jug or bottle came from. The kiosk keeps no reaction: it is `null`.
 */
export function registerLine(
  entry: DayBookEntry,
  { formulary, animals, timeZone }: RegisterWorld,
  words: CorrectionWords = ENGLISH_CORRECTIONS,
): RegisterLine {
  const { treatment, corrections } = entry;
  const { offer, givenAtMs } = treatment;
  const { animal, jug, dose, regimen, approval, weight } = offer;
  const medicine = medicineById(formulary, jug.medicineId);
  const { animalId } = effectOf(entry);
  const species = animalId === null ? null : (animals.get(animalId)?.species ?? null);
  const holds = animalId === null ? null : holdsOfOne(entry, species, timeZone);
  return {
    treatmentId: treatment.id,
    givenAtMs,
    clockTrusted: treatment.clockTrusted,
    animal: {
      name: animal.name,
      tag: animal.tag,
      species: animal.species,
      class: animal.class,
      ageDays: animal.bornAtMs === null ? null : Math.floor((givenAtMs - animal.bornAtMs) / DAY_MS),
      bred: animal.bredAtMs !== null,
      inMilk: animal.inMilk,
    },
    weight: { kilograms: weight.held.mass.value / 1000, method: 'scale' },
    condition: regimen.purpose,
    medicine: {
      name: medicine?.name ?? jug.medicineId,
      active: medicine?.active ?? jug.medicineId,
      mgPerMl: jug.strength.value,
      lot: jug.stock?.lot ?? null,
      expiresAtMs: jug.stock?.expiresAtMs ?? null,
    },
    mixed: mixedFrom(jug, formulary),
    dose: {
      targetMgPerKg: regimen.target.value,
      computedMl: dose.exact.value,
      givenMl: (swallowed(treatment) ?? dose.plan.total).value,
      route: regimen.route,
      outcome: treatment.outcome,
    },
    use: regimen.use,
    directedBy: approval.direction === 'label' ? null : (approval.vet ?? words.aVeterinarian),
    meat: holds?.meat.clear ?? treatment.meat,
    milk: holds?.milk.clear ?? treatment.milk,
    by: treatment.by,
    reaction: null,
    corrections: corrections.map(
      (correction) => `${correctionInWords(correction, animals, words)} (${correction.by})`,
    ),
  };
}

/** How the jug was mixed, from what is known of its powder; `null` for a bottle. */
function mixedFrom(jug: Jug, formulary: Formulary): RegisterLine['mixed'] {
  const presentation = presentationById(formulary, jug.packetId)?.presentation;
  if (presentation?.form === 'liquid') return null;
  const activeGrams = (jug.strength.value * jug.volume.value) / 1000;
  const powderGrams =
    presentation === undefined
      ? null
      : (activeGrams * presentation.grossGrams.value) / presentation.activeGrams.value;
  const contents = jug.weighed?.contents.value ?? null;
  // A gram of water is a millilitre within the 1 % that its warmth makes.
  const waterMl = contents === null || powderGrams === null ? null : tenths(contents - powderGrams);
  return {
    powderGrams: powderGrams === null ? null : tenths(powderGrams),
    waterMl,
    by: jug.by,
    atMs: jug.mixedAtMs,
  };
}

function tenths(value: number): number {
  return Math.round(10 * value) / 10;
}

function correctionInWords(
  { what }: Correction,
  animals: RegisterWorld['animals'],
  words: CorrectionWords,
): string {
  switch (what.kind) {
    case 'not-given':
      return words.notGiven;
    case 'wrong-animal':
      return words.wrongAnimal(animals.get(what.animalId)?.name ?? what.animalId);
    case 'wrong-volume':
      return words.wrongVolume(what.volumeMl);
    case 'vet-time':
      return words.veterinarian(timeInWords(what.meat, words), timeInWords(what.milk, words));
    default:
      return unreachable(what);
  }
}

function timeInWords(time: VetTime | null, words: CorrectionWords): string {
  return time === null ? words.nothingSaid : words.time(time.count, time.unit);
}

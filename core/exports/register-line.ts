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
    directedBy: approval.direction === 'label' ? null : (approval.vet ?? 'veterinarian'),
    meat: holds?.meat.clear ?? treatment.meat,
    milk: holds?.milk.clear ?? treatment.milk,
    by: treatment.by,
    reaction: null,
    corrections: corrections.map((correction) => correctionInWords(correction, animals)),
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

/** A correction in words, with who made it. */
function correctionInWords({ what, by }: Correction, animals: RegisterWorld['animals']): string {
  switch (what.kind) {
    case 'not-given':
      return `not given (${by})`;
    case 'wrong-animal':
      return `wrong animal: ${animals.get(what.animalId)?.name ?? what.animalId} (${by})`;
    case 'wrong-volume':
      return `wrong volume: ${what.volumeMl} mL (${by})`;
    case 'vet-time':
      return `veterinarian: meat ${timeInWords(what.meat)}, milk ${timeInWords(what.milk)} (${by})`;
    default:
      return unreachable(what);
  }
}

function timeInWords(time: VetTime | null): string {
  return time === null ? 'nothing said' : `${time.count} ${time.unit}`;
}

import type { EarlierDose, Rest } from '../dosing/repeats.ts';
import type { Animal } from '../herd/animal.ts';
import type { Jug } from '../mixing/jug.ts';
import { activeIn } from '../quantity/strength.ts';
import { millilitres } from '../quantity/volume.ts';
import type { Correction, Treatment } from './treatment.ts';

/** A treatment with the corrections that stand beside it, oldest first. */
export interface DayBookEntry {
  readonly treatment: Treatment;
  readonly corrections: readonly Correction[];
}

/** What a treatment means today, once its corrections are read. */
export interface Effect {
  /** The animal that swallowed it; `null` where nothing was given. */
  readonly animalId: string | null;
  readonly volumeMl: number;
}

/** Puts each correction beside its treatment. Both lists stay in the order given. */
export function pairUp(treatments: readonly Treatment[], corrections: readonly Correction[]): DayBookEntry[] {
  return treatments.map((treatment) => ({
    treatment,
    corrections: corrections.filter((correction) => correction.treatmentId === treatment.id),
  }));
}

/**
 * Reads a treatment through its corrections: the latest statement on each point counts.
 *
 * Whoever names another animal or volume says with it that the dose was given.
 */
export function effectOf({ treatment, corrections }: DayBookEntry): Effect {
  let animalId = treatment.offer.animal.id;
  let volumeMl = treatment.offer.dose.plan.total.value;
  for (const { what } of corrections) {
    if (what.kind === 'wrong-animal') animalId = what.animalId;
    if (what.kind === 'wrong-volume') volumeMl = what.volumeMl;
  }
  // A veterinarian's time says nothing of whether it was given.
  const given = corrections.findLast(({ what }) => what.kind !== 'vet-time')?.what.kind !== 'not-given';
  return given ? { animalId, volumeMl } : { animalId: null, volumeMl: 0 };
}

/** The doses that really went into animals, in the order they were logged, as the cautions need them. */
export function earlierDoses(entries: readonly DayBookEntry[]): EarlierDose[] {
  return entries.flatMap((entry) => {
    const { animalId } = effectOf(entry);
    if (animalId === null) return [];
    const { offer, givenAtMs, clockTrusted } = entry.treatment;
    return [{ animalId, medicineId: offer.jug.medicineId, givenAtMs, clockTrusted, rest: restOf(entry) }];
  });
}

/** What stayed in the syringe. After a correction of animal or volume nobody can say, so nothing did. */
function restOf({ treatment, corrections }: DayBookEntry): Rest | null {
  const { offer, outcome, left } = treatment;
  if (outcome !== 'part' || left === null) return null;
  if (corrections.some(({ what }) => what.kind !== 'vet-time')) return null;
  return { regimenId: offer.regimen.id, active: activeIn(left, offer.jug.strength) };
}

/** Millilitres drawn from a jug. A dose taken back as not given stays in the jug. */
export function drawnFrom(jugId: string, entries: readonly DayBookEntry[]): number {
  return entries
    .filter((entry) => entry.treatment.offer.jug.id === jugId)
    .reduce((sum, entry) => sum + effectOf(entry).volumeMl, 0);
}

/** Jugs with what the day book says was drawn from each. */
export function withDrawn(jugs: readonly Jug[], entries: readonly DayBookEntry[]): Jug[] {
  return jugs.map((jug) => {
    const taken = entries
      .filter((entry) => entry.treatment.offer.jug.id === jug.id && effectOf(entry).animalId !== null)
      .map((entry) => ({ plan: entry.treatment.offer.dose.plan, volumeMl: effectOf(entry).volumeMl }));
    return {
      ...jug,
      drawn: millilitres(drawnFrom(jug.id, entries)),
      drawnDoubt: millilitres(taken.reduce((sum, { plan, volumeMl }) => sum + plan.relative * volumeMl, 0)),
      draws: taken.reduce((sum, { plan }) => sum + plan.draws.length, 0),
    };
  });
}

/** Animals with the newest weight the day book holds for each, where that is newer than the one they came with. */
export function withLastWeights<A extends Animal>(
  animals: readonly A[],
  entries: readonly DayBookEntry[],
): A[] {
  const newest = new Map<string, NonNullable<Animal['lastWeight']>>();
  for (const entry of entries) {
    const { animalId } = effectOf(entry);
    const { weight } = entry.treatment.offer;
    if (animalId === null || weight.atMs < (newest.get(animalId)?.atMs ?? 0)) continue;
    newest.set(animalId, { mass: weight.held.mass, atMs: weight.atMs });
  }
  return animals.map((animal) => {
    const weight = newest.get(animal.id);
    const isNewer = weight !== undefined && weight.atMs >= (animal.lastWeight?.atMs ?? 0);
    return isNewer ? { ...animal, lastWeight: weight } : animal;
  });
}

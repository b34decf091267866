import type { EarlierDose, Rest } from '../dosing/repeats.ts';
import { activeIn } from '../quantity/strength.ts';
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

/** The animal that stood on the platform: the one named last, whether or not it swallowed anything. */
export function stoodOnPlatform(entry: DayBookEntry): string {
  const { animalId } = effectOf(entry);
  if (animalId !== null) return animalId;
  const named = entry.corrections.findLast(({ what }) => what.kind === 'wrong-animal')?.what;
  return named?.kind === 'wrong-animal' ? named.animalId : entry.treatment.offer.animal.id;
}

/** Every animal a treatment was ever said to be of: the one on the platform, and those its corrections name. */
export function animalsNamed({ treatment, corrections }: DayBookEntry): string[] {
  const named = corrections.flatMap(({ what }) => (what.kind === 'wrong-animal' ? [what.animalId] : []));
  return [...new Set([treatment.offer.animal.id, ...named])];
}

/** The doses that really went into animals, in the order they were logged, as the cautions need them. */
export function earlierDoses(entries: readonly DayBookEntry[]): EarlierDose[] {
  return entries.flatMap((entry) => {
    const { animalId } = effectOf(entry);
    if (animalId === null) return [];
    const { offer, givenAtMs, clockTrusted, board } = entry.treatment;
    const { medicineId } = offer.jug;
    return [{ animalId, medicineId, givenAtMs, clockTrusted, board, rest: restOf(entry) }];
  });
}

/** What stayed in the syringe. After a correction of animal or volume nobody can say, so nothing did. */
function restOf({ treatment, corrections }: DayBookEntry): Rest | null {
  const { offer, outcome, left } = treatment;
  if (outcome !== 'part' || left === null) return null;
  if (corrections.some(({ what }) => what.kind !== 'vet-time')) return null;
  return { regimenId: offer.regimen.id, active: activeIn(left, offer.jug.strength) };
}

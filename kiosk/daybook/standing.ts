import type { TreatmentView } from '../../shared/dose.ts';

/** What stands of a treatment after its corrections, and what was first written where that differs. */
export interface Standing {
  readonly given: boolean;
  readonly animalName: string;
  readonly volumeMl: number;
  readonly wasAnimal: string | null;
  readonly wasVolumeMl: number | null;
}

/** What stands of a treatment now: of each kind of correction the latest counts. */
export function standingOf({ animalName, volumeMl, corrections }: TreatmentView): Standing {
  const given = corrections.findLast(({ kind }) => kind !== 'vet-time')?.kind !== 'not-given';
  const animal = corrections.findLast(({ kind }) => kind === 'wrong-animal')?.animalName ?? animalName;
  const volume = corrections.findLast(({ kind }) => kind === 'wrong-volume')?.volumeMl ?? volumeMl;
  return {
    given,
    animalName: animal,
    volumeMl: volume,
    wasAnimal: animal === animalName ? null : animalName,
    wasVolumeMl: given && volume === volumeMl ? null : volumeMl,
  };
}

import type { Caution } from '../dosing/cautions.ts';
import { type Formulary, medicineById } from '../medicine/formulary.ts';

/** How it is known that the jug in hand is the one whose strength is dosed by. */
export interface Proof {
  /** Weighed on the bench, a held press on its number, or a tap where nothing can be mistaken for it. */
  readonly how: 'bench' | 'held' | 'tap';
  /** Milliseconds since 1970. */
  readonly atMs: number;
  /** What was told of the medicine there and then. */
  readonly told: readonly Caution[];
}

/** What must be known of a medicine before its first dose of a round: what may not have been given near it. */
export function handNotes(medicineId: string, formulary: Formulary): Caution[] {
  const conflicts = medicineById(formulary, medicineId)?.conflicts ?? [];
  return conflicts.map(({ days }) => ({
    code: 'conflict-window',
    strength: 'note',
    values: { days: days.value },
  }));
}

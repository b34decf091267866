import type { Species } from '../herd/animal.ts';
import { type Formulary, sameActive } from '../medicine/formulary.ts';
import type { Proven } from '../reduction/proven.ts';
import type { Caution } from './cautions.ts';

/**
 * Whether the last test of this medicine in this species failed: resistant is asked about, low resistant is noted.
 *
 * The words are those of the 2023 guideline; how strongly each speaks is the kiosk's own guard.
 */
export function workedCautions(
  proven: readonly Proven[],
  formulary: Formulary,
  medicineId: string,
  species: Species,
): Caution[] {
  const last = proven
    .filter((test) => test.species === species && sameActive(formulary, test.medicineId, medicineId))
    .reduce<Proven | null>(
      (newest, test) => (newest === null || test.atMs > newest.atMs ? test : newest),
      null,
    );
  if (last === null) return [];
  const values = { reduction: last.reduction, testedAtMs: last.atMs };
  if (last.verdict === 'resistant') return [{ code: 'test-resistant', strength: 'ask', values }];
  return last.verdict === 'low-resistant' ? [{ code: 'test-low-resistant', strength: 'note', values }] : [];
}

import type { Species } from '../../core/herd/animal.ts';
import { medicineById } from '../../core/medicine/formulary.ts';
import type { VerdictView } from '../../shared/reduction-test.ts';
import type { FarmRecords } from '../barn/barn-context.ts';
import { progressNow, testsNow } from '../worms/tests-now.ts';

/** A finished test as an office compares it with others. Efficacies are fractions. */
export interface OfficeResult {
  readonly farm: string;
  /** Where the farm lies; `null` where nobody said. */
  readonly area: string | null;
  readonly active: string;
  readonly medicine: string;
  readonly species: Species;
  /** Milliseconds since 1970. */
  readonly treatedAtMs: number;
  /** What came of it; `null` where it could not be judged. */
  readonly judged: {
    readonly verdict: VerdictView;
    readonly reduction: number;
    readonly lower: number;
    readonly upper: number;
    readonly animals: number;
  } | null;
}

/** The finished tests of a farm, the newest first. */
export function resultsOf(
  records: FarmRecords,
  of: { readonly farm: string; readonly area: string | null },
): OfficeResult[] {
  const { wallMs } = records.clock.now();
  return testsNow(records)
    .filter((each) => progressNow(each, wallMs).step === 'done')
    .map(({ test, treatedAtMs, findings }): OfficeResult => {
      const medicine = medicineById(records.memory.formulary, test.medicineId);
      const { result } = findings();
      return {
        ...of,
        active: medicine?.active ?? test.medicineId,
        medicine: medicine?.name ?? test.medicineId,
        species: test.species,
        treatedAtMs,
        judged: result.ok
          ? {
              verdict: result.verdict,
              reduction: result.reduction,
              lower: result.limits.lower,
              upper: result.limits.upper,
              animals: result.animals.after,
            }
          : null,
      };
    })
    .sort((a, b) => b.treatedAtMs - a.treatedAtMs);
}

/** How the tests of an active in a species came out in an area. */
export interface OfficeSummary {
  readonly active: string;
  readonly species: Species;
  readonly area: string | null;
  readonly tests: number;
  readonly verdicts: Readonly<Record<VerdictView, number>>;
}

/** Counts results by active, species and area, in the order of their names. */
export function summaryOf(results: readonly OfficeResult[]): OfficeSummary[] {
  const groups = new Map<string, OfficeResult[]>();
  for (const result of results) {
    const key = JSON.stringify([result.active, result.species, result.area ?? '']);
    groups.set(key, [...(groups.get(key) ?? []), result]);
  }
  return [...groups.entries()]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .flatMap(([, group]) => {
      const [first] = group;
      if (first === undefined) return [];
      const verdicts = { resistant: 0, 'low-resistant': 0, susceptible: 0, inconclusive: 0 };
      for (const { judged } of group) if (judged !== null) verdicts[judged.verdict] += 1;
      const { active, species, area } = first;
      return [{ active, species, area, tests: group.length, verdicts }];
    });
}

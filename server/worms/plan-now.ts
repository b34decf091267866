import type { Species } from '../../core/herd/animal.ts';
import { DAY_MS } from '../../core/moment.ts';
import { type Candidate, whomToSample } from '../../core/reduction/plan.ts';
import { type DayBookEntry, effectOf } from '../../core/round/day-book.ts';
import { eggsPerGram } from '../../core/worms/egg-count.ts';
import { countNow, type EggEntry } from '../../core/worms/egg-record.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import type { Store } from '../store/store.ts';

/** One medicine in one species as it was dosed in the last day. */
export interface DosedRound {
  readonly medicineId: string;
  readonly species: Species;
  /** Animals that can be tested with their row of the day book, those likely to show most eggs first. */
  readonly treated: readonly { readonly animalId: string; readonly treatmentId: string }[];
  /** Dosed as well, and not to be tested. */
  readonly leftOut: number;
}

/** Whose samples before can still be taken: eggs laid before the dose are in the dung of the same day. */
const LAST_MS = DAY_MS;
/** More doses than one kiosk gives in a day. */
const MOST_A_DAY = 2000;

/** The doses of the last day, oldest first. */
export function dosedLately({ dayBook }: Store, wallMs: number): DayBookEntry[] {
  const fromMs = wallMs - LAST_MS;
  return dayBook
    .pageAfter({ fromMs, kind: 'treatment' }, null, MOST_A_DAY)
    .flatMap((line) => (line.kind === 'treatment' ? [line.entry] : []))
    .filter(({ treatment }) => treatment.givenAtMs >= fromMs);
}

/** What of the last day could be tested, medicines and species in the order they were first dosed. */
export function dosedRounds(
  { memory, store }: Pick<BarnContext, 'memory' | 'store'>,
  wallMs: number,
): DosedRound[] {
  const { animals, eggCounts, reductionTests } = memory;
  const tested = new Set(
    reductionTests.flatMap((test) => test.animals.map(({ treatmentId }) => treatmentId)),
  );
  const rounds = new Map<string, { medicineId: string; species: Species; entries: DayBookEntry[] }>();
  for (const entry of dosedLately(store, wallMs)) {
    const { treatment } = entry;
    const { animalId } = effectOf(entry);
    const species = animals.find(({ id }) => id === animalId)?.species;
    if (species === undefined || tested.has(treatment.id)) continue;
    const { medicineId } = treatment.offer.jug;
    const key = `${medicineId} ${species}`;
    const round = rounds.get(key) ?? { medicineId, species, entries: [] };
    round.entries.push(entry);
    rounds.set(key, round);
  }
  return [...rounds.values()].map(({ medicineId, species, entries: given }) => {
    const treatmentOf = new Map(given.map((entry) => [effectOf(entry).animalId ?? '', entry.treatment.id]));
    const candidates = given.map((entry) => candidateFrom(entry, eggCounts));
    const treated = whomToSample(candidates, candidates.length).map((animalId) => ({
      animalId,
      treatmentId: treatmentOf.get(animalId) ?? '',
    }));
    return { medicineId, species, treated, leftOut: given.length - treated.length };
  });
}

function candidateFrom(entry: DayBookEntry, eggCounts: readonly EggEntry[]): Candidate {
  const { treatment, corrections } = entry;
  const animalId = effectOf(entry).animalId ?? '';
  // Whoever was named afterwards is not the one whose weight the dose was made for by its own word.
  const sure = !corrections.some(({ what }) => what.kind === 'wrong-animal');
  return {
    animalId,
    outcome: treatment.outcome,
    weighed: sure,
    lastEggs: lastEggsPerGram(animalId, eggCounts),
  };
}

/** What an animal showed last when it was sampled alone, in eggs per gram; `null` where it never was. */
export function lastEggsPerGram(animalId: string, eggCounts: readonly EggEntry[]): number | null {
  const own = eggCounts.filter(
    ({ record }) => record.animalIds.length === 1 && record.animalIds[0] === animalId,
  );
  const last = own
    .flatMap((entry) => countNow(entry) ?? [])
    .sort((a, b) => a.takenAtMs - b.takenAtMs)
    .at(-1);
  return last === undefined ? null : eggsPerGram(last);
}

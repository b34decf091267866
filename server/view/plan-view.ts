import { medicineById } from '../../core/medicine/formulary.ts';
import { retestWindow } from '../../core/reduction/retest.ts';
import { effectOf } from '../../core/round/day-book.ts';
import { mean } from '../../core/statistics/moments.ts';
import type { PlanView } from '../../shared/reduction-test.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import { eggsNow } from '../worms/eggs-now.ts';
import { type DosedRound, dosedLately, dosedRounds, lastEggsPerGram } from '../worms/plan-now.ts';

/** What can be tested of what was dosed in the last day. */
export function planView(barn: BarnContext): PlanView {
  const { wallMs } = barn.clock.now();
  return { rounds: dosedRounds(barn, wallMs).map((round) => roundView(round, barn, wallMs)) };
}

function roundView(
  { medicineId, species, treated, leftOut }: DosedRound,
  { memory, store }: BarnContext,
  wallMs: number,
): PlanView['rounds'][number] {
  const { animals, eggCounts, formulary } = memory;
  const medicine = medicineById(formulary, medicineId);
  const nameOf = (id: string): string => animals.find((animal) => animal.id === id)?.name ?? '';
  const known = treated.map(({ animalId }) => ({
    id: animalId,
    name: nameOf(animalId),
    lastEggsPerGram: lastEggsPerGram(animalId, eggCounts),
  }));
  const own = known.flatMap(({ lastEggsPerGram: eggs }) => eggs ?? []);
  const dosed = new Set(dosedLately(store, wallMs).map((entry) => effectOf(entry).animalId));
  const { fromDay, untilDay, evidence } = retestWindow(medicine?.group ?? null);
  return {
    medicineId,
    medicine: medicine?.name ?? medicineId,
    species,
    treated: known,
    leftOut,
    untreated: animals
      .filter((animal) => animal.species === species && !dosed.has(animal.id))
      .map(({ id, name }) => ({ id, name })),
    expectedEggsPerGram: own.length > 0 ? mean(own) : eggsNow(memory, wallMs),
    window: { fromDay, untilDay, evidence },
  };
}

import { factorOf, methodWords } from '../../core/worms/counting-methods.ts';
import { eggsPerGram, eggsPerGramInterval } from '../../core/worms/egg-count.ts';
import { countNow, type EggEntry } from '../../core/worms/egg-record.ts';
import { herdMean } from '../../core/worms/herd-mean.ts';
import type { EggCountsView, EggCountView, HerdMeanView } from '../../shared/egg-count.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import type { Memory } from '../barn/memory.ts';
import { rfc3339 } from './times.ts';

/** How many counts are told; a herd's of some years. */
const MOST = 500;

/** Newest first: by the day the dung was taken, then as they were logged. */
function newestFirst(entries: readonly EggEntry[]): EggEntry[] {
  return [...entries].reverse().sort((a, b) => b.record.takenAtMs - a.record.takenAtMs);
}

/** The egg counts, newest first, with the mean of the herd. */
export function eggCountsView({ memory, clock }: BarnContext): EggCountsView {
  return {
    mean: herdMeanView(memory, clock.now().wallMs),
    counts: newestFirst(memory.eggCounts)
      .slice(0, MOST)
      .map((entry) => eggCountView(entry, memory)),
  };
}

/** The egg counts an animal has a part in, newest first, without those taken back. */
export function eggCountsOf(animalId: string, memory: Memory, most: number): EggCountView[] {
  const own = memory.eggCounts.filter(
    (entry) => entry.record.animalIds.includes(animalId) && countNow(entry) !== null,
  );
  return newestFirst(own)
    .slice(0, most)
    .map((entry) => eggCountView(entry, memory));
}

/** The mean of the herd by its newest batch; `null` where none is new enough. */
export function herdMeanView({ eggCounts }: Pick<Memory, 'eggCounts'>, wallMs: number): HerdMeanView | null {
  const mean = herdMean(eggCounts, wallMs);
  if (mean === null) return null;
  const { counting, animals, fromMs, toMs } = mean;
  return {
    eggsPerGram: mean.eggsPerGram,
    low: counting.lower,
    high: counting.upper,
    animals,
    from: rfc3339(fromMs),
    to: rfc3339(toMs),
  };
}

function eggCountView(entry: EggEntry, { animals, gone }: Memory): EggCountView {
  const { record, corrections } = entry;
  const now = countNow(entry);
  const count = now ?? {
    eggs: record.eggs,
    factor: factorOf(record.method),
    method: methodWords(record.method),
    animals: record.animalIds.length,
    takenAtMs: record.takenAtMs,
  };
  const { lower, upper } = eggsPerGramInterval(count);
  const names = new Map([...gone, ...animals].map(({ id, name }) => [id, name]));
  return {
    id: record.id,
    animals: record.animalIds.map((id) => ({ id, name: names.get(id) ?? '' })),
    eggs: count.eggs,
    method: record.method,
    factor: count.factor,
    eggsPerGram: eggsPerGram(count),
    low: lower,
    high: upper,
    purpose: record.purpose,
    test: record.test,
    takenAt: rfc3339(record.takenAtMs),
    loggedAt: rfc3339(record.loggedAtMs),
    by: record.by,
    takenBack: now === null,
    corrections: corrections.map(({ what, atMs, by }) => ({
      kind: what.kind,
      eggs: what.kind === 'other-number' ? what.eggs : null,
      at: rfc3339(atMs),
      by,
    })),
  };
}

import { DAY_MS } from '../moment.ts';
import { type EggCount, type GroupMean, groupMean } from './egg-count.ts';
import { countNow, type EggEntry } from './egg-record.ts';

/** Samples taken within so many days of the newest are one batch (the kiosk's own guard). */
const BATCH_DAYS = 7;
/** A batch older than this says nothing of the herd today (the kiosk's own guard). */
const LASTS_DAYS = 30;

/** The mean of the herd by its newest batch of samples. */
export interface HerdMean extends GroupMean {
  /** Milliseconds since 1970 of the first and the last sample of it. */
  readonly fromMs: number;
  readonly toMs: number;
}

/**
 * The mean of the newest batch that was counted to see how the herd stands; `null` where none is new enough.
 *
 * Samples of ill animals, of newcomers and of a reduction test were picked for what they are, and would bend it. Of an
 * animal sampled twice in a batch the later sample counts.
 */
export function herdMean(entries: readonly EggEntry[], wallMs: number): HerdMean | null {
  const counted = entries
    .filter(({ record }) => record.purpose === 'herd')
    .flatMap((entry) => {
      const count = countNow(entry);
      return count === null ? [] : [{ whose: [...entry.record.animalIds].sort().join(), count }];
    })
    .sort((a, b) => a.count.takenAtMs - b.count.takenAtMs);
  const newest = counted.at(-1)?.count.takenAtMs;
  if (newest === undefined || wallMs - newest > LASTS_DAYS * DAY_MS) return null;
  const latest = new Map<string, EggCount>();
  for (const { whose, count } of counted) {
    if (newest - count.takenAtMs <= BATCH_DAYS * DAY_MS) latest.set(whose, count);
  }
  const batch = [...latest.values()];
  const mean = groupMean(batch);
  const fromMs = Math.min(...batch.map(({ takenAtMs }) => takenAtMs));
  return mean === null ? null : { ...mean, fromMs, toMs: newest };
}

import { mkdir, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { DAY_MS, HOUR_MS } from '../../core/moment.ts';
import type { KeepingView } from '../../shared/keeping.ts';
import type { Clock } from '../barn/clock.ts';
import { diskTroubleOf } from '../barn/disk.ts';
import { errorCode } from '../error-code.ts';
import type { Store } from '../store/store.ts';
import { rfc3339 } from '../view/times.ts';
import { type BackedUp, backUp } from './back-up.ts';
import type { UpkeepJobs } from './jobs.ts';
import { backupDate } from './rotation.ts';

/** A place gets a copy once its newest is this old: a little under a day, so that the hour does not creep. */
const DUE_MS = 20 * HOUR_MS;
/** A place that failed is tried again by itself after this long. */
const AGAIN_MS = HOUR_MS;
/** After this long without a copy the Shed says so. */
const OVERDUE_MS = 8 * DAY_MS;
/** For how long the list of places is taken as it was seen. */
const SEEN_FOR_MS = 3000;
/** The folder on a memory stick that copies go to. */
const ON_STICK = 'byreside-backups';

/** Makes copies of the records in places beside the card, by itself and when asked. */
export interface Backups {
  view(): KeepingView['backup'];
  /** Copies to every place that is due. */
  whereDue(): Promise<void>;
  /** Copies to every place there is. Answers whether there is one and no copy is under way. */
  now(): boolean;
}

/** What backups are made with. */
export interface BackupsOptions {
  readonly what: BackedUp;
  /** A folder of the configuration; it is not made, since it may be where a disk is mounted. */
  readonly folder: string | null;
  /** The memory sticks plugged in now. */
  readonly sticks: () => readonly string[];
  readonly jobs: Pick<UpkeepJobs, 'copy'>;
  readonly store: Pick<Store, 'upkeep'>;
  readonly clock: Clock;
  readonly changed: () => void;
  readonly log: (message: string, error: unknown) => void;
}

/** Makes the keeper of backups. */
export function createBackups(options: BackupsOptions): Backups {
  const { what, folder, sticks, jobs, store, clock, changed, log } = options;
  const triedAt = new Map<string, number>();
  let running = false;
  let trouble: KeepingView['backup']['trouble'] = null;

  let seen: { readonly places: readonly string[]; readonly at: number } | null = null;

  /** The places there are, looked for anew only now and then: the state asks for them many times a second. */
  function places(): readonly string[] {
    const at = clock.now().uptimeMs;
    if (seen === null || at - seen.at >= SEEN_FOR_MS)
      seen = { places: [...(folder === null ? [] : [folder]), ...sticks()], at };
    return seen.places;
  }

  async function folderIn(place: string): Promise<string> {
    if (place === folder) return place;
    await mkdir(join(place, ON_STICK), { recursive: true });
    return join(place, ON_STICK);
  }

  async function isDue(place: string): Promise<boolean> {
    const { wallMs, uptimeMs } = clock.now();
    const tried = triedAt.get(place);
    if (tried !== undefined) return uptimeMs - tried >= (trouble === null ? DUE_MS : AGAIN_MS);
    const there = await readdir(await folderIn(place));
    const newest = Math.max(...there.map((name) => backupDate(name)?.atMs ?? Number.NEGATIVE_INFINITY));
    // A copy dated ahead of this clock tells nothing of its age.
    return !clock.isTrusted() || wallMs - newest >= DUE_MS || newest > wallMs;
  }

  async function copyTo(place: string): Promise<void> {
    const { wallMs, uptimeMs } = clock.now();
    triedAt.set(place, uptimeMs);
    try {
      await backUp(await folderIn(place), what, { wallMs, clockTrusted: clock.isTrusted() }, jobs);
      trouble = null;
      store.upkeep.done('backup', wallMs, place);
    } catch (error) {
      log(`no copy of the records could be made in ${place}`, error);
      trouble = troubleOf(error);
    }
  }

  async function run(choose: (place: string) => Promise<boolean>): Promise<void> {
    if (running) return;
    running = true;
    changed();
    try {
      for (const place of places()) {
        const chosen = await choose(place).catch((error: unknown) => {
          log(`${place} could not be looked at for copies`, error);
          return false;
        });
        if (chosen) await copyTo(place);
      }
    } finally {
      running = false;
      changed();
    }
  }

  return {
    view() {
      const last = store.upkeep.last('backup');
      const age = last === null ? null : clock.now().wallMs - last.atMs;
      return {
        places: [...places()],
        running,
        last: last === null ? null : { at: rfc3339(last.atMs), place: last.told ?? '' },
        overdue: age === null || age > OVERDUE_MS,
        trouble,
      };
    },
    whereDue: () => run(isDue),
    now() {
      if (running || places().length === 0) return false;
      void run(async () => true);
      return true;
    },
  };
}

function troubleOf(error: unknown): NonNullable<KeepingView['backup']['trouble']> {
  if (diskTroubleOf(error) === 'full') return 'full';
  return ['ENOENT', 'EIO', 'ENODEV', 'ENXIO'].includes(errorCode(error)) ? 'gone' : 'not-written';
}

import { DAY_MS } from '../../core/moment.ts';
import type { Timers } from '../../hardware/serial/timers.ts';
import type { KeepingView } from '../../shared/keeping.ts';
import type { Clock } from '../barn/clock.ts';
import type { Disk } from '../barn/disk.ts';
import type { Store } from '../store/store.ts';
import { rfc3339 } from '../view/times.ts';
import type { Backups } from './backups.ts';
import type { HowClosely, UpkeepJobs } from './jobs.ts';

/** How often the kiosk looks whether there is anything to do for its upkeep. */
const LOOK_EVERY_MS = 60_000;
/** The first look after a start: late enough to stay out of its way, soon enough that no dose is far. */
const FIRST_LOOK_MS = 5000;
/** How often the whole file is checked. */
const WHOLE_EVERY_MS = 7 * DAY_MS;

/** What the kiosk does for its records while nobody works: checks of the file and copies of it. */
export interface Upkeep {
  view(): KeepingView;
  /** Copies the records to every place there is; answers whether that began. */
  backUpNow(): boolean;
  stop(): void;
}

/** The upkeep of a kiosk that has no file. */
export const NO_UPKEEP: Upkeep = {
  view: () => ({
    disk: null,
    checkedAt: null,
    backup: { places: [], running: false, last: null, overdue: false, trouble: null },
  }),
  backUpNow: () => false,
  stop: () => {},
};

/** What upkeep works with. */
export interface UpkeepOptions {
  readonly file: string;
  readonly jobs: UpkeepJobs;
  readonly backups: Backups;
  readonly store: Pick<Store, 'upkeep'>;
  readonly disk: Disk;
  readonly clock: Clock;
  readonly timers: Timers;
  /** Whether nobody is at work. */
  readonly idle: () => boolean;
  /** Hears what is wrong with the file, a sentence each. */
  readonly damaged: (said: readonly string[]) => void;
  readonly log: (message: string, error: unknown) => void;
}

/** Begins the upkeep: a quick check at once, then by the clock. */
export function startUpkeep(options: UpkeepOptions): Upkeep {
  const { file, jobs, backups, store, disk, clock, timers, idle, damaged, log } = options;
  let stopped = false;
  let next = timers.set(() => void first(), FIRST_LOOK_MS);

  async function check(how: HowClosely): Promise<void> {
    try {
      const said = await jobs.check(file, how);
      if (stopped) return;
      if (said.length > 0) damaged(said);
      else if (how === 'whole') store.upkeep.done('whole-check', clock.now().wallMs);
    } catch (error) {
      log('the file of the records could not be checked', error);
    }
  }

  function wholeIsDue(): boolean {
    const last = store.upkeep.last('whole-check');
    const since = last === null ? null : clock.now().wallMs - last.atMs;
    return since === null || since >= WHOLE_EVERY_MS || since < 0;
  }

  async function first(): Promise<void> {
    await check('quick');
    await look();
  }

  async function look(): Promise<void> {
    try {
      if (disk.trouble() === null && idle()) {
        if (wholeIsDue()) await check('whole');
        if (disk.trouble() === null) await backups.whereDue();
      }
    } catch (error) {
      log('the upkeep of the records failed', error);
    }
    if (!stopped) next = timers.set(() => void look(), LOOK_EVERY_MS);
  }

  return {
    view() {
      const trouble = disk.trouble();
      const checked = store.upkeep.last('whole-check');
      return {
        disk: trouble === 'damaged' ? null : trouble,
        checkedAt: checked === null ? null : rfc3339(checked.atMs),
        backup: backups.view(),
      };
    },
    // Copies of a damaged file would in time push out those of a whole one.
    backUpNow: () => disk.trouble() !== 'damaged' && backups.now(),
    stop() {
      stopped = true;
      timers.clear(next);
    },
  };
}

import {
  ahead,
  type Heads,
  type Holder,
  type HubLine,
  pullOnce,
  pushLacking,
} from '../../core/hub/exchange.ts';
import type { Timers } from '../../hardware/serial/timers.ts';
import { HubRefused } from './line.ts';

/** Why nothing is exchanged with the hub: it is not reached, it shut this kiosk out, or something else, told in words. */
export type SyncTrouble = 'unreachable' | 'shut-out' | 'failing';

/** How the exchange stands. */
export interface Syncing {
  /** Uptime of the last exchange that went well; `null` where none did since the start. */
  readonly lastAtMs: number | null;
  readonly trouble: SyncTrouble | null;
  /** What went wrong, for a person to look up; `null` where nothing did. */
  readonly detail: string | null;
  /** Events of this kiosk and others that the hub lacks; `null` before it was asked. */
  readonly toPush: number | null;
}

/** What the exchange runs with. */
export interface SyncOptions {
  readonly kiosk: Holder;
  readonly hub: HubLine;
  readonly timers: Timers;
  readonly random: () => number;
  /** Hears that {@link Syncing} changed. */
  readonly changed: () => void;
  readonly log: (message: string, error: unknown) => void;
}

/** The exchange with a hub, while it runs. */
export interface Sync {
  view(): Syncing;
  /** Hears that something may have been written: what is new is pushed at once. */
  look(): void;
  stop(): Promise<void>;
}

/** How long the hub is asked to wait for news. A cut that nobody tells of is found out soon after. */
const WAIT_MS = 1500;
/** The first pause after a failure, and the longest: a hub that is back must be found within five seconds. */
const FIRST_PAUSE_MS = 200;
const LONGEST_PAUSE_MS = 1200;

/** A line that is well is told of this often: every screen is sent it. */
const TELL_EVERY_MS = 30_000;

/** How long to wait after so many failures, from 1: twice as long each time, and never in step with other kiosks. */
export function pauseAfter(failures: number, random: () => number): number {
  const longest = Math.min(LONGEST_PAUSE_MS, FIRST_PAUSE_MS * 2 ** (failures - 1));
  return longest / 2 + random() * (longest / 2);
}

/** Exchanges events with a hub until it is stopped, beside the work at the kiosk and never in its way. */
export function startSync({ kiosk, hub, timers, random, changed, log }: SyncOptions): Sync {
  let stopped = false;
  let heads: Heads | null = null;
  let pushing: Promise<void> | null = null;
  let failures = 0;
  let toldAtMs = Number.NEGATIVE_INFINITY;
  let wake = () => {};
  let now: Syncing = { lastAtMs: null, trouble: null, detail: null, toPush: null };

  const lacking = () => {
    if (heads === null) return null;
    const mine = kiosk.heads();
    return ahead(mine, heads).reduce((sum, life) => sum + (mine.get(life) ?? 0) - (heads?.get(life) ?? 0), 0);
  };

  function is(next: Partial<Syncing>): void {
    const before = now;
    now = { ...now, ...next, toPush: lacking() };
    const same = (['trouble', 'detail', 'toPush'] as const).every((part) => now[part] === before[part]);
    if (same && (now.lastAtMs ?? 0) - toldAtMs < TELL_EVERY_MS) return;
    toldAtMs = now.lastAtMs ?? 0;
    changed();
  }

  function failed(error: unknown): void {
    // A line that was closed under a request tells of nothing.
    if (stopped) return;
    failures += 1;
    const trouble = troubleOf(error);
    const detail = error instanceof Error ? error.message : String(error);
    if (now.trouble !== trouble) log(`the hub is ${trouble}`, error);
    is({ trouble, detail });
  }

  function well(): void {
    failures = 0;
    is({ lastAtMs: timers.now(), trouble: null, detail: null });
  }

  async function push(): Promise<void> {
    if (heads === null || stopped) return;
    if (ahead(kiosk.heads(), heads).length === 0) return;
    heads = await pushLacking(kiosk, hub, heads);
    well();
  }

  /** One push at a time; who asks while one runs waits for it and looks again. */
  async function pushSoon(): Promise<void> {
    while (pushing !== null) await pushing.catch(() => {});
    pushing = push();
    try {
      await pushing;
    } finally {
      pushing = null;
    }
  }

  async function run(): Promise<void> {
    while (!stopped) {
      try {
        const pulled = await pullOnce(kiosk, hub, heads === null ? 0 : WAIT_MS);
        heads = pulled.heads;
        well();
        await pushSoon();
      } catch (error) {
        failed(error);
        if (stopped) return;
        await new Promise<void>((resolve) => {
          const timer = timers.set(resolve, pauseAfter(failures, random));
          wake = () => {
            timers.clear(timer);
            resolve();
          };
        });
      }
    }
  }

  const running = run();
  return {
    view: () => now,
    look() {
      // A push that failed is made again with the next pull.
      if (heads !== null && pushing === null && failures === 0) pushSoon().catch(failed);
    },
    async stop() {
      stopped = true;
      wake();
      await running;
    },
  };
}

function troubleOf(error: unknown): SyncTrouble {
  if (!(error instanceof HubRefused)) return 'unreachable';
  return error.code === 'revoked' || error.code === 'unknown-kiosk' ? 'shut-out' : 'failing';
}

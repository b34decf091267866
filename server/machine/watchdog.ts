import { spawn } from 'node:child_process';
import type { Timers } from '../../hardware/serial/timers.ts';

/** Tells the system's service manager how the kiosk is. */
export interface ServiceManager {
  /** The kiosk serves. */
  ready(): void;
  /** It starts anew by itself: nothing is told until it is ready again. */
  rest(): void;
  /** It ends. */
  stopping(): void;
}

/** What the service manager is told through. */
export interface WatchdogOptions {
  readonly env: NodeJS.ProcessEnv;
  readonly timers: Timers;
  /** Does a piece of real work; the watchdog is only fed after it. */
  readonly work: () => Promise<void>;
  /** Sends one state, such as `READY=1`. */
  readonly notify?: (state: string) => void;
  readonly log: (message: string, error: unknown) => void;
}

/** How many times within the watchdog's time it is fed: one that came late is no hang yet. */
const FEEDS = 3;

function notifySystemd(state: string): void {
  // Node cannot write to the manager's socket, which is one of datagrams; systemd brings a program that does.
  spawn('systemd-notify', [state], { stdio: 'ignore' }).on('error', () => {});
}

/**
 * Tells systemd that the kiosk is ready, and keeps its watchdog fed for as long as `work` is done in time.
 *
 * Where nobody asked for that (`NOTIFY_SOCKET`, `WATCHDOG_USEC`; systemd's *sd_notify* and *sd_watchdog_enabled*) it does nothing.
 */
export function tellServiceManager(options: WatchdogOptions): ServiceManager {
  const { env, timers, work, notify = notifySystemd, log } = options;
  const tell = env['NOTIFY_SOCKET'] ? notify : () => {};
  const within = Number(env['WATCHDOG_USEC'] ?? Number.NaN) / 1000;
  let resting = false;
  let next: ReturnType<Timers['set']> | null = null;

  async function feed(): Promise<void> {
    try {
      await work();
      if (!resting) tell('WATCHDOG=1');
    } catch (error) {
      log('the kiosk does not answer itself', error);
    }
    if (!resting) next = timers.set(() => void feed(), within / FEEDS);
  }

  function rest(): void {
    resting = true;
    if (next !== null) timers.clear(next);
  }

  return {
    ready() {
      tell('READY=1');
      if (Number.isFinite(within) && within > 0) void feed();
    },
    rest,
    stopping() {
      rest();
      tell('STOPPING=1');
    },
  };
}

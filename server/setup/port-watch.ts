import type { CandidatePort } from '../../hardware/serial/ports.ts';
import type { TimerHandle, Timers } from '../../hardware/serial/timers.ts';

/** A port and whether it was plugged in since the watch began. */
export interface WatchedPort extends CandidatePort {
  readonly fresh: boolean;
}

/** The ports of this board, looked at again and again. */
export interface PortWatch {
  readonly ports: readonly WatchedPort[];
  stop(): void;
}

const LOOK_EVERY_MS = 700;

/** Looks at once and then until stopped; `changed` is called after each look that found a difference. */
export function watchPorts(
  listPorts: () => Promise<readonly CandidatePort[]>,
  timers: Timers,
  changed: () => void,
): PortWatch {
  let ports: readonly WatchedPort[] = [];
  let old: Set<string> | null = null;
  let timer: TimerHandle | null = null;
  let stopped = false;

  async function look(): Promise<void> {
    const found = await listPorts();
    if (stopped) return;
    const devices = new Set(found.map(({ device }) => device));
    old ??= devices;
    // What was pulled out and put back in counts as new: that is how a keeper finds out which one it is.
    for (const device of old) if (!devices.has(device)) old.delete(device);
    const next = found.map((port) => ({ ...port, fresh: old?.has(port.device) !== true }));
    if (JSON.stringify(next) !== JSON.stringify(ports)) {
      ports = next;
      changed();
    }
    timer = timers.set(() => void look(), LOOK_EVERY_MS);
  }
  void look();

  return {
    get ports() {
      return ports;
    },
    stop() {
      stopped = true;
      if (timer !== null) timers.clear(timer);
    },
  };
}

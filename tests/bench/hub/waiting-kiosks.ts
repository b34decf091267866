import { readdirSync, readFileSync } from 'node:fs';
import type { Invitation } from '../../../server/hub/wire.ts';
import { openHubLine } from '../../../server/sync/line.ts';
import { TICKS_A_SECOND, ticksOf } from '../of-process.ts';
import { untilItGoes } from './kiosk-apart.ts';
import type { RunningHub } from './machines.ts';

/** How long a kiosk asks the hub to wait for news, as it does. */
const WAIT_MS = 1500;
const WATCHED_MS = 15_000;
/** Kiosks begin to wait within this. */
const SPREAD_MS = 6000;
/** What it costs the hub that many kiosks have nothing to tell and wait for news. */
export interface Resting {
  readonly pullsPerSecond: number;
  /** Milliseconds that an answer came later than it was asked for, sorted. */
  readonly late: readonly number[];
  /** What of a core the hub's own process and the database's took together. */
  readonly share: number;
  /** Questions that had no answer in time. */
  readonly failures: number;
}

/** Lets kiosks wait for news for a while, all of them at once. */
export async function restAll(hub: RunningHub, invitations: readonly Invitation[]): Promise<Resting> {
  const late: number[] = [];
  let failures = 0;
  let over = false;
  const lines = invitations.map((invitation, n) =>
    openHubLine({
      invitation: { ...invitation, hub: hub.address },
      kiosk: `many-kiosk-${n}`,
      named: () => {},
    }),
  );
  const running = lines.map(async (line, n) => {
    // Not all in one instant, as kiosks do not start in one.
    await new Promise((resolve) => setTimeout(resolve, (n / lines.length) * SPREAD_MS));
    // What is held was pulled before; here it counts only that there is nothing new.
    const tips = new Map<string, { sequence: number; id: string }>();
    for (const [life, sequence] of (await untilItGoes(() => line.pull(new Map(), 0))).heads) {
      const id = await untilItGoes(() => line.idAt(life, sequence));
      if (id !== null) tips.set(life, { sequence, id });
    }
    while (!over) {
      const from = performance.now();
      await line.pull(tips, WAIT_MS).catch(() => (failures += 1));
      late.push(performance.now() - from - WAIT_MS);
    }
  });
  await new Promise((resolve) => setTimeout(resolve, SPREAD_MS + 2 * WAIT_MS));
  late.length = 0;
  failures = 0;
  const before = ticksOf(hub.pid) + ticksOfDatabase();
  await new Promise((resolve) => setTimeout(resolve, WATCHED_MS));
  const share = (ticksOf(hub.pid) + ticksOfDatabase() - before) / TICKS_A_SECOND / (WATCHED_MS / 1000);
  const pullsPerSecond = late.length / (WATCHED_MS / 1000);
  const sorted = [...late].sort((a, b) => a - b);
  const failed = failures;
  over = true;
  await Promise.all(running);
  for (const line of lines) line.close();
  return { pullsPerSecond, late: sorted, share, failures: failed };
}

/** The work of the processes that serve the hub's connections. */
function ticksOfDatabase(): number {
  return readdirSync('/proc').reduce((sum, name) => {
    try {
      const ours = readFileSync(`/proc/${name}/cmdline`, 'utf8').startsWith('postgres: byreside hub_');
      return ours ? sum + ticksOf(Number(name)) : sum;
    } catch {
      return sum;
    }
  }, 0);
}

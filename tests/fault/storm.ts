import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Connection } from '../../hardware/serial/connection.ts';
import type { Cable } from '../../hardware/simulator/cable.ts';
import { createPtyCable } from '../../hardware/simulator/pty-cable.ts';
import { seededRandom } from '../../hardware/simulator/random.ts';
import { type Vitals, vitalsOf } from '../process/kiosk-vitals.ts';
import { farmFolder, kill, startOn } from './farm.ts';

/** What a storm of devices came to. */
export interface StormReport {
  readonly seconds: number;
  readonly noiseBytes: number;
  readonly plugs: number;
  /** Questions for the state, and those that were answered. */
  readonly asked: number;
  readonly answered: number;
  readonly slowestAnswerMs: number;
  /** Answers in which the platform showed a number: noise is no weight, so it must be 0. */
  readonly weightsShown: number;
  readonly before: Vitals;
  readonly after: Vitals;
}

/** The fastest line a scale or wand is set to, in bytes a second: 115,200 baud, ten bits a byte. */
const LINE_RATE = 11_520;
const EVERY_MS = 20;
const PLUGGED_MS = 100;
/** What the kiosk needs to have everything compiled and its buffers at their size. */
const WARM_MS = 3000;

/**
 * A kiosk whose platform and wand send noise at full line rate, while the bench is pulled and plugged every 100 ms.
 *
 * Rejects where `socat` is missing.
 */
export async function storm(seconds: number, seed: number): Promise<StormReport> {
  const cables = await mkdtemp(join(tmpdir(), 'byreside-storm-'));
  const random = seededRandom(seed);
  let noiseBytes = 0;
  const talking: NodeJS.Timeout[] = [];
  const noisy = (far: Connection) => {
    talking.push(
      setInterval(() => {
        const chunk = Uint8Array.from({ length: (LINE_RATE * EVERY_MS) / 1000 }, () =>
          Math.floor(random() * 256),
        );
        far.write(chunk);
        noiseBytes += chunk.length;
      }, EVERY_MS),
    );
  };
  const cable = async (name: string, farEnd: (far: Connection) => void): Promise<Cable> => {
    const made = await createPtyCable(cables, name, farEnd);
    if (made === null) throw new Error('socat is not installed');
    return made;
  };
  const platform = await cable('platform', noisy);
  const wand = await cable('wand', noisy);
  const bench = await cable('bench', () => {});
  const folder = farmFolder();
  const kiosk = await startOn(folder, {
    BYRESIDE_PLATFORM: `${platform.path},st-gs,115200`,
    BYRESIDE_WAND: `${wand.path},wand-line,115200`,
    BYRESIDE_BENCH: `${bench.path},sma,9600`,
  });
  try {
    await new Promise((resolve) => setTimeout(resolve, WARM_MS));
    await vitalsOf(kiosk.base);
    await new Promise((resolve) => setTimeout(resolve, 500));
    const before = await vitalsOf(kiosk.base);
    const end = performance.now() + seconds * 1000;
    const counts = { plugs: 0, asked: 0, answered: 0, slowestAnswerMs: 0, weightsShown: 0 };
    const pulling = (async () => {
      while (performance.now() < end) {
        await bench.pull();
        await new Promise((resolve) => setTimeout(resolve, PLUGGED_MS));
        await bench.plug();
        counts.plugs += 1;
        await new Promise((resolve) => setTimeout(resolve, PLUGGED_MS));
      }
    })();
    while (performance.now() < end) {
      counts.asked += 1;
      const from = performance.now();
      const state = await kiosk.state();
      counts.answered += 1;
      counts.slowestAnswerMs = Math.max(counts.slowestAnswerMs, performance.now() - from);
      if (state.platform.live !== null) counts.weightsShown += 1;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
    await pulling;
    return { seconds, noiseBytes, ...counts, before, after: await vitalsOf(kiosk.base) };
  } finally {
    for (const each of talking) clearInterval(each);
    await kill(kiosk);
    for (const each of [platform, wand, bench]) await each.stop();
    for (const each of [cables, folder]) await rm(each, { recursive: true, force: true });
  }
}

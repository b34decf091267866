import { readdirSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Reading } from '../../core/weighing/reading.ts';
import { scaleDriver } from '../../hardware/scale/scale-driver.ts';
import { SMA } from '../../hardware/scale/sma.ts';
import type { Connection } from '../../hardware/serial/connection.ts';
import { createLink } from '../../hardware/serial/link.ts';
import { openSerialPort } from '../../hardware/serial/serialport-connection.ts';
import { systemTimers } from '../../hardware/serial/timers.ts';
import { createPtyCable } from '../../hardware/simulator/pty-cable.ts';
import { bytes } from './bytes.ts';

/** How the link stood up to being unplugged over and over. */
export interface SoakReport {
  readonly cycles: number;
  /** Cycles after which it was ready again; must equal `cycles`. */
  readonly readyAgain: number;
  /** The longest way from the port's being there to ready, in milliseconds. */
  readonly slowestMs: number;
  /** Readings told while the link was not ready, or that showed a weight of an earlier cycle; must be 0. */
  readonly stale: number;
  /** Commands that arrived though they were given while nothing was plugged in; must be 0. */
  readonly queued: number;
  /** File descriptors held at the end beyond those at the start. */
  readonly leakedDescriptors: number;
}

const WITHIN_MS = 10_000;

/**
 * Pulls and plugs a polled scale so many times over pseudo-terminals, each time with another weight on it.
 *
 * Every other cycle it is pulled in the middle of a reply. Rejects where `socat` is missing or a wait is in vain.
 */
export async function soak(cycles: number): Promise<SoakReport> {
  const folder = await mkdtemp(join(tmpdir(), 'byreside-soak-'));
  const timers = systemTimers();
  let weight = 0;
  let heard = '';
  const cable = await createPtyCable(folder, 'port', (far: Connection) => {
    const shown = weight;
    heard = '';
    far.onData((chunk) => {
      heard += Buffer.from(chunk).toString('latin1');
      if (!heard.endsWith('\r')) return;
      const reply = bytes(`\n 1G${String(shown).padStart(12)}g  \r`);
      // In two pieces, so that a pull can come between them.
      far.write(reply.subarray(0, 9));
      timers.set(() => far.write(reply.subarray(9)), 2);
    });
  });
  if (cable === null) throw new Error('socat is not installed');

  let [stale, queued, readyAgain, slowestMs] = [0, 0, 0, 0];
  const link = createLink<Reading>({
    path: cable.path,
    baud: 9600,
    driver: scaleDriver(SMA, 'bench', timers.now),
    openPort: openSerialPort,
    timers,
    random: () => 0.5,
    onState: () => {},
    onItem: (reading) => {
      if (link.state.status !== 'ready' || reading.mass.value !== weight) stale += 1;
    },
  });
  async function until(isSo: () => boolean): Promise<number> {
    const from = timers.now();
    while (!isSo()) {
      if (timers.now() - from > WITHIN_MS) throw new Error(`in vain: the link is ${link.state.status}`);
      await sleep(2);
    }
    return timers.now() - from;
  }

  await until(() => link.state.status === 'ready');
  const before = descriptors();
  for (let cycle = 1; cycle <= cycles; cycle += 1) {
    if (cycle % 2 === 0) await sleep(cycle % 17);
    await cable.pull();
    await until(() => link.state.status === 'lost');
    if (link.send(bytes('\nT\r'))) queued += 1;
    weight = cycle;
    await cable.plug();
    slowestMs = Math.max(slowestMs, await until(() => link.state.status === 'ready'));
    readyAgain += 1;
    if (heard.includes('T')) queued += 1;
  }
  const leakedDescriptors = descriptors() - before;
  await link.stop();
  await cable.stop();
  await rm(folder, { recursive: true, force: true });
  return { cycles, readyAgain, slowestMs, stale, queued, leakedDescriptors };
}

function descriptors(): number {
  return readdirSync('/proc/self/fd').length;
}

function sleep(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}

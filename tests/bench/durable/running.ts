import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { median } from '../../../core/statistics/moments.ts';
import { type KioskProcess, startKiosk } from '../../process/kiosk-process.ts';
import { residentMb, TICKS_A_SECOND, ticksOf } from '../of-process.ts';
import type { Figure } from '../table.ts';
import { quarterCore } from './quarter-core.ts';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const ALLOWED = { startMs: 1000, residentMb: 110, restShare: 0.02 } as const;
const STARTS = 5;
/** The kiosk is let settle before it is watched, and watched so long. */
const SETTLED_MS = 10_000;
const WATCHED_MS = 20_000;
/** Node with the options that the board's service gives it. */
const AS_ON_BOARD = [
  process.execPath,
  ...nodeOptionsOf(readFileSync(join(ROOT, 'hardware/board/byreside.service'), 'utf8')),
];

/** What a running kiosk takes: of a core, and of memory in MB. */
interface Takes {
  readonly share: number;
  readonly residentMb: number;
}

/**
 * The built kiosk as a process of its own, its scales in another: how soon it shows a live weight, and what it takes at
 * rest without a device, and while two scales stream and animals come and go.
 */
export async function runningFigures(): Promise<Figure[]> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-running-'));
  writeFileSync(join(folder, 'kiosk.json'), '{}');
  const scales = await startSimulator();
  const quarter = quarterCore();
  try {
    const whole = await measured(folder, scales.env, AS_ON_BOARD);
    const small = quarter && (await measured(folder, scales.env, [...quarter.before, ...AS_ON_BOARD]));
    return [...figures(whole), ...(small === null ? [] : figuresOfQuarter(small, whole))];
  } finally {
    scales.stop();
    quarter?.remove();
    rmSync(folder, { recursive: true, force: true });
  }
}

function nodeOptionsOf(unit: string): string[] {
  const options = /^ExecStart=\S+\/node (.*?)\S+\/main\.js$/m.exec(unit)?.[1];
  if (options === undefined) throw new Error('the service does not say how it starts Node');
  return options.split(' ').filter((option) => option !== '');
}

/** Platform, bench and wand in a process of their own, on pseudo-terminals. */
async function startSimulator() {
  const child = spawn(process.execPath, ['dist/hardware/simulator/main.js'], { cwd: ROOT });
  let said = '';
  const env = await new Promise<Record<string, string>>((resolve, reject) => {
    child.stdout.on('data', (text) => {
      said += String(text);
      const set = [...said.matchAll(/^(BYRESIDE_\w+)=(.+)$/gm)];
      if (said.includes('Put these'))
        resolve(Object.fromEntries(set.map(([, name, value]) => [name, value])));
    });
    child.once('exit', () => reject(new Error(`the simulator stopped: ${said}`)));
  });
  return { env, stop: () => child.kill('SIGTERM') };
}

/** The kiosk run by a command: its starts, and what it takes without and with devices. */
async function measured(folder: string, env: Record<string, string>, command: readonly string[]) {
  const starts: number[] = [];
  for (let n = 0; n < STARTS; n += 1) {
    const { kiosk, tookMs } = await startedOn(folder, env, command);
    starts.push(tookMs);
    await ended(kiosk);
  }
  const rest = await taken(await startKiosk({ BYRESIDE_DATA: folder }, [], command));
  const work = await taken((await startedOn(folder, env, command)).kiosk);
  return { startMs: median(starts), rest, work };
}

type Measured = Awaited<ReturnType<typeof measured>>;

async function startedOn(folder: string, env: Record<string, string>, command: readonly string[]) {
  const from = performance.now();
  const kiosk = await startKiosk({ BYRESIDE_DATA: folder, ...env }, [], command);
  for (;;) {
    if ((await kiosk.state()).platform.live !== null) return { kiosk, tookMs: performance.now() - from };
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
}

/** Watches a kiosk for a while and ends it. */
async function taken(kiosk: KioskProcess): Promise<Takes> {
  const { pid } = kiosk.child;
  await new Promise((resolve) => setTimeout(resolve, SETTLED_MS));
  const before = ticksOf(pid);
  await new Promise((resolve) => setTimeout(resolve, WATCHED_MS));
  const share = (ticksOf(pid) - before) / TICKS_A_SECOND / (WATCHED_MS / 1000);
  const held = residentMb(pid);
  await ended(kiosk);
  return { share, residentMb: held };
}

const percent = (share: number) => `${(share * 100).toFixed(1)} % of a core`;

function figures({ startMs, rest, work }: Measured): Figure[] {
  const past = (is: boolean) => (is ? ', past the goal' : '');
  return [
    {
      what: 'start until the first live weight, median',
      ratio: startMs / ALLOWED.startMs,
      against: `the ${ALLOWED.startMs} ms allowed`,
      raw: `${startMs.toFixed(0)} ms, Node alone ${bareNode().toFixed(0)} ms${past(startMs > ALLOWED.startMs)}`,
    },
    {
      what: 'memory held while two scales stream',
      ratio: work.residentMb / ALLOWED.residentMb,
      against: `the ${ALLOWED.residentMb} MB allowed`,
      raw: `${work.residentMb.toFixed(0)} MB resident, ${rest.residentMb.toFixed(0)} MB without a device${past(work.residentMb > ALLOWED.residentMb)}`,
    },
    {
      what: 'work at rest, without a device',
      ratio: rest.share / ALLOWED.restShare,
      against: `the ${ALLOWED.restShare * 100} % of a core allowed`,
      raw: `${percent(rest.share)}${past(rest.share > ALLOWED.restShare)}`,
    },
    {
      what: 'work while two scales stream',
      ratio: work.share / Math.max(rest.share, 1 / TICKS_A_SECOND / (WATCHED_MS / 1000)),
      against: 'work at rest',
      raw: percent(work.share),
    },
  ];
}

/** The same on a quarter of a core, as a stand-in for a small board. */
function figuresOfQuarter(small: Measured, whole: Measured): Figure[] {
  return [
    {
      what: 'on a quarter of a core: the same start',
      ratio: small.startMs / whole.startMs,
      against: 'a whole one',
      raw: `${small.startMs.toFixed(0)} ms`,
    },
    {
      what: 'on a quarter of a core: work at rest',
      ratio: small.rest.share / ALLOWED.restShare,
      against: `the ${ALLOWED.restShare * 100} % of a core allowed`,
      raw: percent(small.rest.share),
    },
    {
      what: 'on a quarter of a core: work while two stream',
      ratio: small.work.share / 0.25,
      against: 'all there is',
      raw: percent(small.work.share),
    },
  ];
}

/** What Node itself takes to start and end here. */
function bareNode(): number {
  const took = Array.from({ length: STARTS }, () => {
    const from = performance.now();
    spawnSync(process.execPath, ['-e', '0']);
    return performance.now() - from;
  });
  return median(took);
}

function ended({ child }: KioskProcess): Promise<void> {
  return new Promise((resolve) => {
    child.once('exit', () => resolve());
    child.kill('SIGTERM');
  });
}

import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { CDPSession, Page } from 'playwright-core';
import { openKiosk } from '../browser/kiosk-page.ts';
import { has, type KioskProcess, startKiosk } from '../process/kiosk-process.ts';
import type { Figure } from './table.ts';

/** How much slower the page's processor is made, as on a small board. */
const SLOWER = 4;
const FRAMES_PER_S = 20;
const LONG_TASK_MS = 50;
/** A page that has just come still compiles and fetches; a keeper weighs on one that has been there for hours. */
const SETTLES_MS = 5000;
const WATCHED_MS = 30_000;
/** What is wanted: frames a second, share of a processor at rest, and byte to pixel in ms. */
const GOALS = { framesPerSecond: 60, idle: 0.03, pixelMs: 50 };

/** A scale's line, whose far end is this benchmark: each frame shows another weight. */
class Stream {
  readonly #write: (text: string) => Promise<unknown>;
  readonly sentAt = new Map<string, number>();
  #timer: ReturnType<typeof setInterval> | undefined;
  #tenths = 100;

  constructor(write: (text: string) => Promise<unknown>) {
    this.#write = write;
  }

  start(): void {
    this.#timer = setInterval(() => {
      this.#tenths = this.#tenths >= 499 ? 100 : this.#tenths + 1;
      const kilograms = (this.#tenths / 10).toFixed(1);
      this.sentAt.set(kilograms, Date.now());
      void this.#write(`US,GS,+${kilograms.padStart(7)}kg\r\n`);
    }, 1000 / FRAMES_PER_S);
  }

  stop(): void {
    clearInterval(this.#timer);
  }
}

/** How the page lives while weights stream in, `minutes` long: frames, long tasks, memory, rest, and byte to pixel. */
export async function pageAliveFigures(minutes: number): Promise<Figure[]> {
  if (!has('socat')) throw new Error('socat is missing: apt-get install socat');
  const folder = mkdtempSync(join(tmpdir(), 'page-alive-'));
  const [near, far] = [join(folder, 'near'), join(folder, 'far')];
  const socat = spawn('socat', [`pty,raw,echo=0,link=${near}`, `pty,raw,echo=0,link=${far}`]);
  let server: KioskProcess | undefined;
  let close = async (): Promise<void> => {};
  try {
    await new Promise((resolve) => setTimeout(resolve, 500));
    const line = await open(far, 'r+');
    const stream = new Stream((text) => line.write(text));
    stream.start();
    writeFileSync(join(folder, 'kiosk.json'), JSON.stringify({ people: ['Wren'] }));
    server = await startKiosk({ BYRESIDE_DATA: folder, BYRESIDE_PLATFORM: `${near},st-gs,9600` });
    await server.until(({ platform }) => platform.link === 'ready', 'the platform ready');
    await server.send({ type: 'safety-read' });
    const kiosk = await openKiosk(server.base);
    close = async () => {
      stream.stop();
      await line.close();
      await kiosk.close();
    };
    const { page } = kiosk;
    await page.waitForSelector('[data-testid="link-platform"]');
    const session = await page.context().newCDPSession(page);
    await session.send('Performance.enable');
    await session.send('HeapProfiler.enable');
    await page.waitForTimeout(SETTLES_MS);
    const pixels = await byteToPixels(page, stream);
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
    const smooth = await smoothness(page);
    const heap = await heapGrowth(session, minutes);
    await session.send('Emulation.setCPUThrottlingRate', { rate: 1 });
    stream.stop();
    const idle = await idleShare(session);
    return figures({ pixels, smooth, heap, idle, minutes });
  } finally {
    await close();
    server?.child.kill('SIGTERM');
    socat.kill();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** From the write of a frame to the animation frame after the one that drew it, in ms, sorted. */
async function byteToPixels(page: Page, stream: Stream): Promise<number[]> {
  const drawn = await page.evaluate(async (watchedMs) => {
    const seen: [string, number][] = [];
    const lamp = document.querySelector('[data-testid="link-platform"]');
    const observer = new MutationObserver(() => {
      const kilograms = /\d+\.\d/.exec(lamp?.textContent ?? '')?.[0] ?? '';
      requestAnimationFrame(() => requestAnimationFrame(() => seen.push([kilograms, Date.now()])));
    });
    if (lamp !== null) observer.observe(lamp, { subtree: true, childList: true, characterData: true });
    await new Promise((resolve) => setTimeout(resolve, watchedMs));
    observer.disconnect();
    return seen;
  }, WATCHED_MS);
  const times = drawn.flatMap(([kilograms, at]) => {
    const sent = stream.sentAt.get(kilograms);
    return sent === undefined || at < sent ? [] : [at - sent];
  });
  if (times.length < WATCHED_MS / 100)
    throw new Error(`only ${times.length} weights were drawn, so nothing was measured`);
  return times.sort((a, b) => a - b);
}

/** Frames a second over ten seconds, and the tasks that took longer than a hand notices. */
function smoothness(page: Page): Promise<{ framesPerSecond: number; longTasks: number[] }> {
  return page.evaluate(async (longest) => {
    const longTasks: number[] = [];
    const observer = new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries())
        if (duration > longest) longTasks.push(Math.round(duration));
    });
    observer.observe({ type: 'longtask' });
    let frames = 0;
    const from = performance.now();
    await new Promise<void>((resolve) => {
      const next = (): void => {
        frames += 1;
        if (performance.now() - from > 10_000) resolve();
        else requestAnimationFrame(next);
      };
      requestAnimationFrame(next);
    });
    observer.disconnect();
    return { framesPerSecond: (1000 * frames) / (performance.now() - from), longTasks };
  }, LONG_TASK_MS);
}

async function metric(session: CDPSession, name: string): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics');
  return metrics.find((each) => each.name === name)?.value ?? Number.NaN;
}

/** Memory that is still held after so many minutes, against a minute's beginning, in bytes. */
async function heapGrowth(session: CDPSession, minutes: number): Promise<{ before: number; after: number }> {
  const held = async (): Promise<number> => {
    await session.send('HeapProfiler.collectGarbage');
    return metric(session, 'JSHeapUsedSize');
  };
  const before = await held();
  await new Promise((resolve) => setTimeout(resolve, minutes * 60_000));
  return { before, after: await held() };
}

/** The share of a processor that the page takes while nothing streams. */
async function idleShare(session: CDPSession): Promise<number> {
  const seconds = 15;
  await new Promise((resolve) => setTimeout(resolve, 5000));
  const before = await metric(session, 'TaskDuration');
  await new Promise((resolve) => setTimeout(resolve, seconds * 1000));
  return ((await metric(session, 'TaskDuration')) - before) / seconds;
}

function figures({
  pixels,
  smooth,
  heap,
  idle,
  minutes,
}: {
  pixels: readonly number[];
  smooth: { framesPerSecond: number; longTasks: readonly number[] };
  heap: { before: number; after: number };
  idle: number;
  minutes: number;
}): Figure[] {
  const at = (share: number): number => pixels[Math.floor(share * (pixels.length - 1))] ?? Number.NaN;
  const { framesPerSecond, longTasks } = smooth;
  return [
    {
      what: `frames a second, ${SLOWER} x slower, ${FRAMES_PER_S} weights a second`,
      ratio: framesPerSecond / GOALS.framesPerSecond,
      against: `${GOALS.framesPerSecond} a second`,
      raw: `${framesPerSecond.toFixed(1)}, ${longTasks.length} tasks over ${LONG_TASK_MS} ms${longTasks.length > 0 ? `, longest ${Math.max(...longTasks)} ms` : ''}`,
    },
    {
      what: 'byte on the line to pixels, p99',
      ratio: at(0.99) / GOALS.pixelMs,
      against: `the ${GOALS.pixelMs} ms allowed`,
      raw: `${at(0.99)} ms, median ${at(0.5)} ms of ${pixels.length}`,
    },
    {
      what: `memory held after ${minutes} min of streaming`,
      ratio: heap.after / heap.before,
      against: 'before it',
      raw: `${(heap.before / 1e6).toFixed(2)} MB, then ${(heap.after / 1e6).toFixed(2)} MB`,
    },
    {
      what: 'processor at rest',
      ratio: idle / GOALS.idle,
      against: `the ${100 * GOALS.idle} % allowed`,
      raw: `${(100 * idle).toFixed(2)} %`,
    },
  ];
}

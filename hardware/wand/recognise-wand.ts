import type { OpenPort } from '../serial/connection.ts';
import type { TimerHandle, Timers } from '../serial/timers.ts';
import { LineReader } from './line-reader.ts';
import { WAND_BAUD } from './wand-driver.ts';
import { readWandLine } from './wand-line.ts';

/** The speeds of wands, the usual one first. */
export const WAND_BAUDS: readonly number[] = [WAND_BAUD, 115_200, 19_200, 38_400, 57_600, 4800];

/** After the last byte of a wave: a line that is not complete by then is not coming. */
const WAVE_ENDS_MS = 300;
/** How long is waited for a wave before it is given up. */
const PATIENCE_MS = 30_000;

/** What recognition of a wand needs. */
export interface RecogniseWandOptions {
  readonly path: string;
  readonly openPort: OpenPort;
  readonly timers: Timers;
  /** Called before each speed, for the screen. */
  readonly onStep?: (baud: number) => void;
  /** Ends it early. */
  readonly signal?: AbortSignal;
}

/** A speed at which a wave was read, with its line. */
export interface WandHeard {
  readonly baud: number;
  readonly sample: string;
}

/**
 * Listens to a wand that is waved again and again, at the next speed after each wave that could not be read.
 *
 * `null` where no wave came for 30 s, or none was read at any speed twice over. Only listens. The port must be free,
 * and is free again at the end. Rejects with `OpenFailure`.
 */
export async function recogniseWand(options: RecogniseWandOptions): Promise<WandHeard | null> {
  // Twice: the first wave at a speed may have begun before its port was open.
  for (const baud of [...WAND_BAUDS, ...WAND_BAUDS]) {
    if (options.signal?.aborted === true) return null;
    options.onStep?.(baud);
    const heard = await hearWave(options, baud);
    if (heard === 'nothing') return null;
    if (heard !== 'garbled') return { baud, sample: heard };
  }
  return null;
}

/** The first line read, or what came of waiting for one. */
async function hearWave(
  options: RecogniseWandOptions,
  baud: number,
): Promise<string | 'garbled' | 'nothing'> {
  const { timers, signal } = options;
  const port = await options.openPort(options.path, baud);
  let timer: TimerHandle | null = null;
  try {
    return await new Promise((resolve) => {
      timer = timers.set(() => resolve('nothing'), PATIENCE_MS);
      const reader = new LineReader((framed) => {
        if (framed.kind === 'line' && isWandLine(framed.text)) resolve(framed.text);
      });
      port.onData((chunk) => {
        if (timer !== null) timers.clear(timer);
        timer = timers.set(() => resolve('garbled'), WAVE_ENDS_MS);
        reader.push(chunk);
      });
      signal?.addEventListener('abort', () => resolve('nothing'), { once: true });
    });
  } finally {
    if (timer !== null) timers.clear(timer);
    await port.close();
  }
}

/** Whether a line is of a form that wands send, even where its number is not an animal's. */
function isWandLine(text: string): boolean {
  const line = readWandLine(text);
  return line.kind === 'tag' || line.why !== 'unknown-line';
}

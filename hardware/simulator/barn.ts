import { mkdir } from 'node:fs/promises';
import type { OpenPort } from '../serial/connection.ts';
import { OpenFailure } from '../serial/open-failure.ts';
import { openSerialPort } from '../serial/serialport-connection.ts';
import type { Timers } from '../serial/timers.ts';
import { WAND_PROFILE } from '../wand/wand-driver.ts';
import type { Cable } from './cable.ts';
import { createMemoryCable } from './memory-cable.ts';
import { createPtyCable } from './pty-cable.ts';
import { createSimBench, type SimBench } from './sim-bench.ts';
import type { SimDevice } from './sim-device.ts';
import { createSimPlatform, type SimPlatform } from './sim-platform.ts';
import { createSimWand, type SimWand } from './sim-wand.ts';

/** A barn without animals: three simulated devices at the far ends of three cables. */
export interface SimulatedBarn {
  /** Opens the near ends, exactly as real ports are opened. */
  readonly openPort: OpenPort;
  readonly medium: 'pseudo-terminal' | 'memory';
  readonly paths: { readonly platform: string; readonly bench: string; readonly wand: string };
  readonly profiles: { readonly platform: string; readonly bench: string; readonly wand: string };
  readonly platform: SimPlatform;
  readonly bench: SimBench;
  readonly wand: SimWand;
  readonly cables: { readonly platform: Cable; readonly bench: Cable; readonly wand: Cable };
  stop(): Promise<void>;
}

/** What a simulated barn needs. */
export interface SimulatedBarnOptions {
  readonly timers: Timers;
  /** Any integer: the same seed gives the same animals. */
  readonly seed: number;
  /** Where the pseudo-terminals get their names; made if missing, and not shared with another barn. */
  readonly folder: string;
  /** Asks for memory even where pseudo-terminals can be had. */
  readonly medium?: 'memory';
}

/** A cable and, where it is no serial port, the way to open it. */
interface Laid {
  readonly cable: Cable;
  readonly openPort: OpenPort | null;
}

/**
 * Starts the three devices, plugged in: on pseudo-terminals where `socat` is present, else in memory.
 *
 * The platform sends `st-gs` in kilograms by 0.05, the bench answers `sma` in grams by 1, the wand sends `wand-line`.
 */
export async function createSimulatedBarn(options: SimulatedBarnOptions): Promise<SimulatedBarn> {
  const { timers, folder } = options;
  await mkdir(folder, { recursive: true });
  const platform = createSimPlatform({ timers, seed: options.seed });
  const bench = createSimBench({ timers });
  const wand = createSimWand();

  async function lay(name: string, device: SimDevice): Promise<Laid> {
    const farEnd = device.attach;
    const cable = options.medium === 'memory' ? null : await createPtyCable(folder, name, farEnd);
    if (cable !== null) return { cable, openPort: null };
    const inMemory = createMemoryCable(`memory:${name}`, timers, farEnd);
    return { cable: inMemory, openPort: inMemory.openPort };
  }
  const laid = {
    platform: await lay('platform', platform),
    bench: await lay('bench', bench),
    wand: await lay('wand', wand),
  };
  const all = Object.values(laid);

  return {
    async openPort(path, baud) {
      const found = all.find((one) => one.cable.path === path);
      if (found === undefined) throw new OpenFailure('not-found', path);
      return (found.openPort ?? openSerialPort)(path, baud);
    },
    medium: laid.platform.openPort === null ? 'pseudo-terminal' : 'memory',
    paths: { platform: laid.platform.cable.path, bench: laid.bench.cable.path, wand: laid.wand.cable.path },
    profiles: { platform: 'st-gs', bench: 'sma', wand: WAND_PROFILE },
    platform,
    bench,
    wand,
    cables: { platform: laid.platform.cable, bench: laid.bench.cable, wand: laid.wand.cable },
    async stop() {
      for (const device of [platform, bench, wand]) device.stop();
      await Promise.all(all.map((one) => one.cable.stop()));
    },
  };
}

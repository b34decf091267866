import { statSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Dictionary } from '../core/speech/pronounce.ts';
import { senseBoard } from '../hardware/board/sensors.ts';
import { startRecorder } from '../hardware/ear/alsa-recorder.ts';
import { openDictionary } from '../hardware/ear/dictionary.ts';
import { createEar } from '../hardware/ear/ear.ts';
import { findEngine } from '../hardware/ear/engine.ts';
import { playOnAlsa } from '../hardware/mouth/alsa-player.ts';
import { EspeakMouth } from '../hardware/mouth/espeak-mouth.ts';
import { programFound } from '../hardware/mouth/find-engine.ts';
import { listPorts } from '../hardware/serial/ports.ts';
import { openSerialPort } from '../hardware/serial/serialport-connection.ts';
import { listSerialPorts } from '../hardware/serial/serialport-list.ts';
import { systemTimers, type Timers } from '../hardware/serial/timers.ts';
import { systemClock } from './barn/clock.ts';
import type { Environment } from './config/environment.ts';
import { loadSetup, type Setup } from './config/load.ts';
import type { OpenEar } from './ear/hearing.ts';
import { openHouse } from './house.ts';
import { log } from './log.ts';
import { type NextStart, type PracticeLook, practiceSetup } from './practice/practice.ts';
import { openHubLine } from './sync/line.ts';
import { jobsInThreads } from './upkeep/in-threads.ts';
import { sticksNow } from './upkeep/sticks.ts';

/** The engine that speaks. */
const ENGINE = 'espeak-ng';

/** The release, as its package says. */
const VERSION: string = createRequire(import.meta.url)('../../package.json').version;

/** A kiosk that is up: where, how it runs, and how to end it. */
export interface Served {
  readonly address: string;
  readonly kind: Setup['kind'];
  /** Reads a page of the day book as a screen would: whoever waits for it knows that the kiosk works. */
  work(): Promise<void>;
  stop(): Promise<void>;
}

/** How a kiosk is asked to start. */
export interface HowAsked {
  readonly demoAsked: boolean;
  /** The look of a practice round; `null` where none is held. */
  readonly practice: PracticeLook | null;
}

/**
 * Brings up one kiosk: configuration, disk, devices, web server.
 *
 * `onRestart` is called when the configuration was changed at the screen, so that it takes a new start to use it.
 * Throws, with everything closed again, when the address cannot be listened on.
 */
export async function serve(
  environment: Environment,
  { demoAsked, practice }: HowAsked,
  onRestart: (next: NextStart) => void,
): Promise<Served> {
  const setup = practice === null ? loadSetup(environment, demoAsked) : practiceSetup(practice);
  const timers = systemTimers();
  const simulatorFolder = await mkdtemp(join(tmpdir(), 'byreside-'));
  // What is practised lies in a folder that goes with it: the farm's own is not even opened.
  const dataFolder = practice === null ? environment.dataFolder : join(simulatorFolder, 'practice');
  const house = await openHouse({
    setup,
    dataFolder,
    practice,
    simulatorFolder,
    openPort: openSerialPort,
    listPorts: () => listPorts({ list: listSerialPorts }),
    devicesByEnvironment: Object.keys(environment.devices).length > 0,
    timers,
    mouth: programFound(ENGINE) ? new EspeakMouth({ program: ENGINE }) : null,
    openEar: findEar(timers),
    recordOnBoard: (device, tells) => startRecorder({ device, timers, random: Math.random, ...tells }),
    microphone: environment.microphone,
    playOnBoard: playOnAlsa,
    networkPort: environment.networkPort,
    jobs: jobsInThreads(),
    openHub: openHubLine,
    sticks: sticksNow,
    sense: senseBoard,
    version: VERSION,
    // The clock is not believed before the day this file was built.
    clock: systemClock(statSync(fileURLToPath(import.meta.url)).mtimeMs),
    random: Math.random,
    log,
    onRestart,
  });
  // The ports settle while the web server is read in: nothing else of the start waits for so long.
  const { buildApp } = await import('./app.ts');
  const app = await buildApp(house, environment.host, fileURLToPath(new URL('../kiosk', import.meta.url)));
  async function stop(): Promise<void> {
    await app.close();
    await house.stop();
    await rm(simulatorFolder, { recursive: true, force: true });
  }
  try {
    const address = await app.listen({ port: environment.port, host: environment.host });
    const work = async () => void (await app.inject('/api/treatments?limit=1'));
    return { address, kind: setup.kind, work, stop };
  } catch (error) {
    await stop();
    throw error;
  }
}

/** The speech engine of this machine, with its dictionary read when it is first opened; `null` where it is missing. */
function findEar(timers: Timers): OpenEar | null {
  const engine = findEngine();
  if (engine === null) return null;
  let dictionary: Dictionary | null = null;
  return (tells) => {
    dictionary ??= openDictionary();
    return createEar({ ...engine, dictionary, timers, random: Math.random, ...tells });
  };
}

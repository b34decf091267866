import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { v7 as uuidv7 } from 'uuid';
import type { Playing } from '../hardware/mouth/alsa-player.ts';
import type { Mouth } from '../hardware/mouth/mouth.ts';
import type { Wav } from '../hardware/mouth/wav.ts';
import type { OpenPort } from '../hardware/serial/connection.ts';
import type { CandidatePort } from '../hardware/serial/ports.ts';
import type { Timers } from '../hardware/serial/timers.ts';
import { createSimulatedBarn, type SimulatedBarn } from '../hardware/simulator/barn.ts';
import { WAND_BAUD, WAND_PROFILE } from '../hardware/wand/wand-driver.ts';
import type { KioskState, ProblemView } from '../shared/state.ts';
import { type Barn, createBarn } from './barn/barn.ts';
import type { BarnContext } from './barn/barn-context.ts';
import type { Clock } from './barn/clock.ts';
import { defaultSettings, loadMemory } from './barn/memory.ts';
import type { KioskConfig } from './config/kiosk-config.ts';
import { DEMO_DATABASE, REAL_DATABASE, type Setup } from './config/load.ts';
import { changeConfig } from './config/save.ts';
import { withDevice } from './config/with-device.ts';
import { seedDemoFarm } from './demo/demo-farm.ts';
import { createTray } from './demo/tray.ts';
import { createDevices, type Devices } from './devices/devices.ts';
import { createHearing, type Hearing, type OpenEar, type OpenRecorder } from './ear/hearing.ts';
import { createRecordings } from './ear/recordings.ts';
import { DEMO_MEDICINES_FILE, MEDICINES_FILE, medicinesFile } from './formulary/own-medicines.ts';
import { createHerdFile } from './herd/herd-file.ts';
import { createPhotos } from './herd/photos.ts';
import { createWeatherImport } from './season/weather-import.ts';
import { createDeviceSetup } from './setup/device-setup.ts';
import { createAlsaOutlet } from './speech/alsa-outlet.ts';
import { createPageOutlet, type PageOutlet } from './speech/page-outlet.ts';
import { createSpeaker, type Speaker } from './speech/speaker.ts';
import { createStore, type Store } from './store/store.ts';
import { type Standing, stateView } from './view/state-view.ts';

/** Folders of photos below the data folder; the demo has one of its own. */
const PHOTOS = 'photos';
const DEMO_PHOTOS = 'demo-photos';
/** Folders of sound recorded on the keeper's wish. */
const RECORDINGS = 'recordings';
const DEMO_RECORDINGS = 'demo-recordings';
/** How often time is let pass: offers run out to within this. */
const TICK_MS = 500;
/** How long an answer has to reach the screen before a restart. */
const RESTART_AFTER_MS = 300;

/** The whole kiosk but its web server: state, disk, devices, and in the demo the simulated barn. */
export interface House {
  readonly barn: Barn;
  readonly standing: Standing;
  /** What is said aloud. */
  readonly speaker: Speaker;
  /** What the kiosk hears. */
  readonly hearing: Pick<Hearing, 'told' | 'sound' | 'gone'>;
  /** The pages that may say it. */
  readonly pages: Pick<PageOutlet, 'told' | 'gone'>;
  state(): KioskState;
  log(message: string, error: unknown): void;
  stop(): Promise<void>;
}

/** What a house is built from. */
export interface HouseOptions {
  readonly setup: Setup;
  readonly dataFolder: string;
  /** Where simulated devices get their names; only used by the demo. */
  readonly simulatorFolder: string;
  readonly openPort: OpenPort;
  /** Lists the ports a device may be plugged into. */
  readonly listPorts: () => Promise<readonly CandidatePort[]>;
  /** Whether the environment sets the devices, so that what the screen would set up could not last. */
  readonly devicesByEnvironment: boolean;
  readonly timers: Timers;
  /** The engine that speaks; `null` where none is installed. */
  readonly mouth: Mouth | null;
  /** The engine that hears; `null` where none is installed. */
  readonly openEar: OpenEar | null;
  /** Listens on the board's own microphone. */
  readonly recordOnBoard: (
    alsaDevice: string,
    tells: Parameters<OpenRecorder>[0],
  ) => ReturnType<OpenRecorder>;
  /** The ALSA name of that microphone where the environment sets it. */
  readonly microphone: string | null;
  /** Plays a sound on the board's own loudspeaker. */
  readonly playOnBoard: (wav: Wav, alsaDevice: string) => Playing;
  readonly clock: Clock;
  readonly random: () => number;
  readonly log: (message: string, error: unknown) => void;
  /** Called when the configuration was changed at the screen and wants a new start. */
  readonly onRestart: () => void;
}

/** Opens disk and devices and puts the house in order. Without a readable configuration it opens neither. */
export async function openHouse(options: HouseOptions): Promise<House> {
  const { setup, clock, timers, random, log } = options;
  const { store, problem } = openDisk(options);
  const demo = setup.kind === 'demo';
  if (demo) seedDemoFarm(store, Math.round(clock.now().wallMs), uuidv7);
  const simulated = demo
    ? await createSimulatedBarn({
        timers,
        seed: Math.floor(random() * 2 ** 31),
        folder: options.simulatorFolder,
      })
    : null;

  const config: KioskConfig = {
    ...setup.config,
    devices: problem === null ? deviceConfig(setup, simulated) : {},
  };
  // The demo has a file of its own: what is tried there reaches no real work.
  const medicines = medicinesFile(options.dataFolder, demo ? DEMO_MEDICINES_FILE : MEDICINES_FILE);
  const memory = loadMemory(store, defaultSettings(config), medicines.read());
  const latestGivenMs = store.dayBook.latestGivenMs();
  if (latestGivenMs !== null) clock.sawRecordAt(latestGivenMs);
  for (const jug of memory.jugs) clock.sawRecordAt(jug.mixedAtMs);
  const checks = [memory.scaleChecks.platform, memory.scaleChecks.bench, ...memory.syringeChecks];
  for (const check of checks) if (check !== null) clock.sawRecordAt(check.atMs);
  const recordings = createRecordings(join(options.dataFolder, demo ? DEMO_RECORDINGS : RECORDINGS));
  let devices: Devices | null = null;
  const deviceSetup = createDeviceSetup({
    devices: () => devices,
    config: () => context.config.devices,
    write: (role, device) => {
      context.config = withDevice(options.dataFolder, context.config, role, device);
    },
    listPorts: options.listPorts,
    openPort: options.openPort,
    timers,
    random,
    changed: () => barn.changed(),
    log,
  });
  const context: BarnContext = {
    memory,
    store,
    clock,
    config,
    newId: () => uuidv7(),
    linkOf: (role) => devices?.linkOf(role) ?? 'absent',
    zero: (role) => devices?.zero(role) ?? 'not-ready',
    medicines,
    photos: createPhotos(join(options.dataFolder, demo ? DEMO_PHOTOS : PHOTOS), () => uuidv7()),
    herdFile: createHerdFile({
      folder: join(options.dataFolder, 'import'),
      now: () => clock.now().wallMs,
      newId: () => uuidv7(),
      changed: () => barn.changed(),
      log,
    }),
    weatherImport: createWeatherImport({
      folder: join(options.dataFolder, 'import'),
      now: () => clock.now().wallMs,
      newId: () => uuidv7(),
      changed: () => barn.changed(),
      log,
    }),
    setup: demo ? 'not-in-demo' : options.devicesByEnvironment ? 'set-by-environment' : deviceSetup,
    tray: simulated === null ? null : createTray(simulated, random),
    tryVoice: (earcon) => speaker.tryVoice(earcon),
    wipeRecordings: recordings.wipe,
    leaveDemo: demo ? () => leaveDemo(options) : null,
  };
  const pages = createPageOutlet(() => barn.changed());
  const { output, alsaDevice } = config.speech;
  const speaker = createSpeaker({
    barn: context,
    timers,
    mouth: options.mouth,
    outlet:
      output === 'page'
        ? pages
        : createAlsaOutlet(
            (wav) => options.playOnBoard(wav, alsaDevice),
            () => barn.changed(),
          ),
    changed: () => barn.changed(),
    log,
  });
  const barn = createBarn(context, log, {
    changed: soon(() => {
      speaker.look();
      hearing.look();
    }),
    answered: speaker.answered,
  });
  const microphone = options.microphone ?? config.hearing.alsaDevice ?? null;
  const hearing = createHearing({
    barn,
    speaker,
    timers,
    // A kiosk that cannot do its work is not spoken to.
    openEar: problem === null ? options.openEar : null,
    openRecorder: microphone === null ? null : (tells) => options.recordOnBoard(microphone, tells),
    recordings,
    log,
  });
  devices = createDevices({
    config: config.devices,
    openPort: simulated?.openPort ?? options.openPort,
    timers,
    random,
    listener: { reading: barn.read, wandRead: barn.wandRead, link: barn.linkChanged },
  });
  const ticking = setInterval(() => barn.tick(), TICK_MS);
  const standing: Standing = {
    bootId: uuidv7(),
    demo,
    problem,
    devices: () => devices?.views() ?? [],
    voice: speaker.view,
    ear: () => hearing.view(),
  };
  return {
    barn,
    standing,
    speaker,
    hearing,
    pages,
    state: () => stateView(barn.context, standing),
    log,
    async stop() {
      clearInterval(ticking);
      speaker.stop();
      await hearing.stop();
      await deviceSetup.stop();
      await devices?.stop();
      await simulated?.stop();
      store.close();
    },
  };
}

/** Looks once after a burst of changes: what an intent or a reading does in several steps is one change to the ear. */
function soon(look: () => void): () => void {
  let waiting = false;
  return () => {
    if (waiting) return;
    waiting = true;
    setImmediate(() => {
      waiting = false;
      look();
    });
  };
}

/** Configures the data folder, so that it is a demo no more, and starts anew once the answer is out. */
function leaveDemo({ dataFolder, timers, onRestart }: HouseOptions): void {
  changeConfig(dataFolder, (config) => config);
  timers.set(onRestart, RESTART_AFTER_MS);
}

function openDisk({ setup, dataFolder, log }: HouseOptions): { store: Store; problem: ProblemView | null } {
  if (setup.kind === 'problem') return { store: createStore(':memory:'), problem: setup.problem };
  const file = join(dataFolder, setup.kind === 'demo' ? DEMO_DATABASE : REAL_DATABASE);
  try {
    mkdirSync(dataFolder, { recursive: true });
    return { store: createStore(file), problem: null };
  } catch (error) {
    log('the database could not be opened', error);
    const problem: ProblemView = {
      code: 'store-unreadable',
      file,
      field: null,
      detail: error instanceof Error ? error.message : String(error),
      remedy:
        'Check that the card is not full or read-only, or restore a copy of the file, then start the kiosk again.',
    };
    return { store: createStore(':memory:'), problem };
  }
}

function deviceConfig(setup: Setup, simulated: SimulatedBarn | null): KioskConfig['devices'] {
  if (simulated === null) return setup.config.devices;
  const { paths, profiles } = simulated;
  const scale = (role: 'platform' | 'bench') => ({ path: paths[role], profile: profiles[role], baud: 9600 });
  return {
    platform: { ...scale('platform'), divisionGrams: 50 },
    // Its step is left to its decimals: the tray can put a finer scale there.
    bench: scale('bench'),
    wand: { path: paths.wand, profile: WAND_PROFILE, baud: WAND_BAUD },
  };
}

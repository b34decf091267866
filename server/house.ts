import { join } from 'node:path';
import { v7 as uuidv7 } from 'uuid';
import { VOICE_MAY_GIVE } from '../core/speech/voice-may-give.ts';
import type { BoardSenses } from '../hardware/board/sensors.ts';
import type { Playing } from '../hardware/mouth/alsa-player.ts';
import type { Mouth } from '../hardware/mouth/mouth.ts';
import type { Wav } from '../hardware/mouth/wav.ts';
import type { OpenPort } from '../hardware/serial/connection.ts';
import type { CandidatePort } from '../hardware/serial/ports.ts';
import type { Timers } from '../hardware/serial/timers.ts';
import { createSimulatedBarn } from '../hardware/simulator/barn.ts';
import type { MachinePage } from '../shared/machine.ts';
import type { KioskState } from '../shared/state.ts';
import { type Barn, createBarn } from './barn/barn.ts';
import type { BarnContext } from './barn/barn-context.ts';
import type { Clock } from './barn/clock.ts';
import { tellClockOfRecords } from './barn/clock-at-start.ts';
import { NO_DISK, watchDisk } from './barn/disk.ts';
import { isIdle } from './barn/is-idle.ts';
import type { KioskConfig } from './config/kiosk-config.ts';
import { CONFIG_FILE, type Setup } from './config/load.ts';
import { changeConfig } from './config/save.ts';
import { withDevice } from './config/with-device.ts';
import { withSettings } from './config/with-settings.ts';
import { devicesOf } from './demo/simulated-devices.ts';
import { createTray } from './demo/tray.ts';
import { createDevices, type Devices } from './devices/devices.ts';
import { createHearing, type Hearing, type OpenEar, type OpenRecorder } from './ear/hearing.ts';
import { createRecordings } from './ear/recordings.ts';
import { DEMO_MEDICINES_FILE, MEDICINES_FILE, medicinesFile } from './formulary/own-medicines.ts';
import { createHerdFile } from './herd/herd-file.ts';
import { createPhotos } from './herd/photos.ts';
import { watchMachine } from './machine/machine.ts';
import { machinePage } from './machine/page.ts';
import { accessFile } from './network/access-file.ts';
import { Network } from './network/network.ts';
import { damagedProblem, openRecords } from './open-records.ts';
import { leadAnimals } from './practice/lead-animals.ts';
import { whenLeftAlone } from './practice/left-alone.ts';
import { furnishPractice, lookOf, type NextStart, type PracticeLook } from './practice/practice.ts';
import { createWeatherImport } from './season/weather-import.ts';
import { createDeviceSetup } from './setup/device-setup.ts';
import { createAlsaOutlet } from './speech/alsa-outlet.ts';
import { createPageOutlet, type PageOutlet } from './speech/page-outlet.ts';
import { createSpeaker, type Speaker } from './speech/speaker.ts';
import { joinFarm, NO_FARM } from './sync/farm.ts';
import type { openHubLine } from './sync/line.ts';
import type { TableSurroundings } from './table-file/table-reading.ts';
import { createBackups } from './upkeep/backups.ts';
import type { UpkeepJobs } from './upkeep/jobs.ts';
import { NO_UPKEEP, startUpkeep } from './upkeep/upkeep.ts';
import { type Standing, stateView } from './view/state-view.ts';

/** Folders of photos below the data folder; the demo has one of its own. */
const PHOTOS = 'photos';
const DEMO_PHOTOS = 'demo-photos';
/** Folders of sound recorded on the keeper's wish. */
const RECORDINGS = 'recordings';
const DEMO_RECORDINGS = 'demo-recordings';
/** Folders of who is let in besides the board. */
const NETWORK = 'network';
const DEMO_NETWORK = 'demo-network';
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
  /** Who is let in besides the board. */
  readonly network: Network;
  /** The pages that may say it. */
  readonly pages: Pick<PageOutlet, 'told' | 'gone'>;
  state(): KioskState;
  /** The board and the kiosk on it. */
  machine(): MachinePage;
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
  /** Checks and copies of the database. */
  readonly jobs: UpkeepJobs;
  /** Opens the line to a hub. */
  readonly openHub: typeof openHubLine;
  /** Where memory sticks are mounted now. */
  readonly sticks: () => readonly string[];
  /** Asks the board how it is. */
  readonly sense: () => BoardSenses;
  /** Which release this is. */
  readonly version: string;
  /** The port for other devices where the environment sets it. */
  readonly networkPort: number | null;
  readonly clock: Clock;
  readonly random: () => number;
  readonly log: (message: string, error: unknown) => void;
  /** The look of a practice round; `null` where the kiosk works. */
  readonly practice: PracticeLook | null;
  /** Called when the screen asked for something that takes a new start. */
  readonly onRestart: (next: NextStart) => void;
}

/** Opens disk and devices and puts the house in order. Without a readable configuration it opens neither. */
export async function openHouse(options: HouseOptions): Promise<House> {
  const { setup, dataFolder, clock, timers, random, log, practice, onRestart } = options;
  const demo = setup.kind === 'demo';
  const startAnew = (next: NextStart) => void timers.set(() => onRestart(next), RESTART_AFTER_MS);
  const simulated = demo
    ? await createSimulatedBarn({
        timers,
        seed: Math.floor(random() * 2 ** 31),
        folder: options.simulatorFolder,
      })
    : null;

  // The demo has a file of its own: what is tried there reaches no real work.
  const medicines = medicinesFile(dataFolder, demo ? DEMO_MEDICINES_FILE : MEDICINES_FILE);
  const { wallMs } = clock.now();
  const records = openRecords({
    setup,
    dataFolder,
    ownMedicines: medicines.read(),
    // Devices that the environment sets are somebody's who needs no leading.
    leads: setup.kind === 'real' && !options.devicesByEnvironment,
    wallMs,
    log,
  });
  const { file, store, memory, problem } = records;
  const disk =
    file === null
      ? NO_DISK
      : watchDisk({ folder: dataFolder, probe: () => store.upkeep.done('probe', clock.now().wallMs), log });
  const config: KioskConfig = {
    ...setup.config,
    devices: problem !== null ? {} : simulated === null ? setup.config.devices : devicesOf(simulated),
  };
  tellClockOfRecords(clock, store, memory);
  const recordings = createRecordings(join(dataFolder, demo ? DEMO_RECORDINGS : RECORDINGS));
  const photos = join(dataFolder, demo ? DEMO_PHOTOS : PHOTOS);
  let devices: Devices | null = null;
  const deviceSetup = createDeviceSetup({
    devices: () => devices,
    config: () => context.config.devices,
    write: (role, device) => {
      context.config = withDevice(dataFolder, context.config, role, device);
    },
    listPorts: options.listPorts,
    openPort: options.openPort,
    timers,
    random,
    changed: () => barn.changed(),
    log,
  });
  const importing: TableSurroundings = {
    folder: join(dataFolder, 'import'),
    now: () => clock.now().wallMs,
    newId: () => uuidv7(),
    changed: () => barn.changed(),
    log,
  };
  const { on = false, port, proxy = null } = config.network;
  const networkFolder = join(dataFolder, demo ? DEMO_NETWORK : NETWORK);
  const network = new Network({
    folder: networkFolder,
    file: accessFile(networkFolder),
    config: { on, port: options.networkPort ?? port, proxy },
    people: () => context.config.people,
    clock,
    newId: () => uuidv7(),
    changed: () => barn.changed(),
    log,
  });
  const context: BarnContext = {
    memory,
    store,
    clock,
    disk,
    config,
    newId: () => uuidv7(),
    linkOf: (role) => devices?.linkOf(role) ?? 'absent',
    zero: (role) => devices?.zero(role) ?? 'not-ready',
    medicines,
    photos: createPhotos(photos, () => uuidv7()),
    herdFile: createHerdFile(importing),
    weatherImport: createWeatherImport(importing),
    setup: demo ? 'not-in-demo' : options.devicesByEnvironment ? 'set-by-environment' : deviceSetup,
    // A configuration file would end the demo.
    settle: demo
      ? null
      : (settings) => {
          context.config = withSettings(dataFolder, context.config, settings);
        },
    tray: simulated === null ? null : createTray(simulated, random),
    network,
    backUpNow: () => upkeep.backUpNow(),
    farm: NO_FARM,
    tryVoice: (earcon) => speaker.tryVoice(earcon),
    wipeRecordings: recordings.wipe,
    leaveDemo:
      demo && practice === null
        ? () => {
            changeConfig(dataFolder, (kept) => kept);
            startAnew({ kind: 'real' });
          }
        : null,
    beginPractice: practice === null ? () => startAnew({ kind: 'practice', look: lookOf(context) }) : null,
    endPractice: practice === null ? null : () => startAnew({ kind: 'before' }),
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
  const { endPractice } = context;
  const leftAlone = endPractice === null ? null : whenLeftAlone(timers, endPractice);
  const barn = createBarn(context, log, {
    changed: soon(() => {
      speaker.look();
      hearing.look();
      context.farm.look();
    }),
    answered(intent, answer) {
      leftAlone?.touched();
      speaker.answered(intent, answer);
    },
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
    mayGive: VOICE_MAY_GIVE,
    log,
  });
  devices = createDevices({
    config: config.devices,
    openPort: simulated?.openPort ?? options.openPort,
    timers,
    random,
    listener: { reading: barn.read, wandRead: barn.wandRead, link: barn.linkChanged },
  });
  if (practice !== null) furnishPractice(context, practice);
  const stopLeading = practice === null ? () => undefined : leadAnimals(context);
  let damage: readonly string[] = [];
  const upkeep =
    file === null
      ? NO_UPKEEP
      : startUpkeep({
          file,
          jobs: options.jobs,
          backups: createBackups({
            what: {
              database: file,
              beside: {
                '.kiosk.json': join(dataFolder, CONFIG_FILE),
                '.medicines.json': join(dataFolder, MEDICINES_FILE),
              },
              photos,
            },
            folder: config.backupFolder ?? null,
            // What is tried in the demo is worth no stick.
            sticks: demo ? () => [] : options.sticks,
            jobs: options.jobs,
            store,
            clock,
            changed: () => barn.changed(),
            log,
          }),
          store,
          disk,
          clock,
          timers,
          idle: () => isIdle(context.memory),
          damaged(said) {
            damage = said;
            disk.foundDamaged();
            barn.changed();
          },
          log,
        });
  // What is tried in the demo is nobody else's.
  if (!demo && file !== null)
    context.farm = joinFarm({
      dataFolder,
      barn,
      openHub: options.openHub,
      sticks: options.sticks,
      timers,
      random,
      changed: () => barn.changed(),
      log,
      restart: () => startAnew({ kind: 'real' }),
    });
  const machine = watchMachine({ sense: options.sense, timers, changed: () => barn.changed(), log });
  const ticking = setInterval(() => {
    barn.tick();
    network.tick();
  }, TICK_MS);
  const standing: Standing = {
    bootId: uuidv7(),
    demo,
    practice: practice !== null,
    get problem() {
      if (file === null || disk.trouble() !== 'damaged') return problem;
      return damagedProblem(file, damage);
    },
    devices: () => devices?.views() ?? [],
    voice: speaker.view,
    ear: () => hearing.view(),
    keeping: upkeep.view,
    machine: machine.view,
    network: () => network.view(),
  };
  return {
    barn,
    standing,
    speaker,
    hearing,
    pages,
    network,
    state: () => stateView(barn.context, standing),
    machine: () => machinePage(machine, file, options.version),
    log,
    async stop() {
      clearInterval(ticking);
      machine.stop();
      stopLeading();
      leftAlone?.stop();
      await context.farm.stop();
      upkeep.stop();
      speaker.stop();
      await hearing.stop();
      await deviceSetup.stop();
      await devices?.stop();
      await simulated?.stop();
      if (disk.trouble() === 'damaged') store.closeUntouched();
      else store.close();
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

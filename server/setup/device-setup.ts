import { fitsSteps, USUAL_STEPS } from '../../core/proving/steps.ts';
import { askAbout } from '../../hardware/scale/ask-about.ts';
import { scaleProfile } from '../../hardware/scale/profiles.ts';
import type { OpenPort } from '../../hardware/serial/connection.ts';
import { OpenFailure } from '../../hardware/serial/open-failure.ts';
import type { CandidatePort } from '../../hardware/serial/ports.ts';
import type { TimerHandle, Timers } from '../../hardware/serial/timers.ts';
import { WAND_PROFILE } from '../../hardware/wand/wand-driver.ts';
import type { Refusal } from '../../shared/intent.ts';
import type { SetupView } from '../../shared/setup.ts';
import type { DeviceRole } from '../../shared/tray.ts';
import type { DevicesConfig } from '../config/kiosk-config.ts';
import type { Devices } from '../devices/devices.ts';
import type { Choice } from './choice.ts';
import { divisionOf, NOTHING_TOLD, type ToldFacts, toldFacts } from './facts.ts';
import { choiceOfGuess, openLines } from './lines-link.ts';
import { watchPorts } from './port-watch.ts';
import { needsOf, prove } from './prove.ts';
import { firstStep, type ListeningStep, recogniseDevice } from './recognise-device.ts';
import { setupView } from './setup-view.ts';
import { IDLE, type Stage } from './stage.ts';
import { openTrial } from './trial-link.ts';

/** Why devices cannot be set up at the screen: they are simulated, or the environment sets them. */
export type SetupClosed = 'not-in-demo' | 'set-by-environment';

/** The setting up of one device at a time, by taps. Each verb returns why not, or `null`. */
export interface DeviceSetup {
  look(): Refusal | null;
  listen(role: DeviceRole, path: string): Refusal | null;
  try(role: DeviceRole, index: number): Refusal | null;
  /** Shows the lines of a scale whose format none of the proposals is. */
  lines(): Refusal | null;
  /** Proposes expressions for the lines heard. */
  patterns(): Refusal | null;
  prove(loadId: string): Refusal | null;
  /** Takes the keeper's word that nobody ever takes a tare on the scale on trial. */
  neverTared(): Refusal | null;
  /** Takes the keeper's word in which steps the scale on trial counts, in last digits shown. */
  countsIn(lastDigits: number): Refusal | null;
  /** Throws when the disk refuses; then the trial goes on. */
  keep(): Refusal | null;
  drop(): Refusal | null;
  /** Throws when the disk refuses. */
  remove(role: DeviceRole): Refusal | null;
  view(): SetupView;
  /** Ends what is under way; resolves when its port is free. */
  stop(): Promise<void>;
}

/** What a set-up needs. */
export interface DeviceSetupOptions {
  readonly devices: () => Devices | null;
  /** The configuration in force. */
  readonly config: () => DevicesConfig;
  /** Puts a device, or none, into the configuration on disk and in memory. Throws when the disk refuses. */
  readonly write: <R extends DeviceRole>(role: R, device: DevicesConfig[R]) => void;
  readonly listPorts: () => Promise<readonly CandidatePort[]>;
  readonly openPort: OpenPort;
  readonly timers: Timers;
  readonly random: () => number;
  readonly changed: () => void;
  readonly log: (message: string, error: unknown) => void;
}

/** A set-up left alone for this long ends: the device that was there before comes back. */
const LEFT_ALONE_MS = 10 * 60_000;

/** Starts with nothing under way. */
export function createDeviceSetup(options: DeviceSetupOptions): DeviceSetup {
  const { timers, changed, openPort, random } = options;
  let stage: Stage = IDLE;
  /** Ends the work of the stage: what still arrives from it is not heard. */
  let turn = new AbortController();
  /** Resolves when the port last worked on is free. */
  let portFree: Promise<unknown> = Promise.resolve();
  /** The role whose own port was freed for the set-up. */
  let lent: DeviceRole | null = null;
  let alone: TimerHandle | null = null;

  function enter(next: Stage): void {
    stage = next;
    if (alone !== null) timers.clear(alone);
    alone = next.step === 'idle' ? null : timers.set(drop, LEFT_ALONE_MS);
    changed();
  }

  /** Ends whatever the stage has open, and gives the next stage a turn of its own. */
  function leave(): AbortSignal {
    turn.abort();
    turn = new AbortController();
    if (stage.step === 'ports') stage.watch.stop();
    const opened = stage.step === 'trial' || stage.step === 'lines' ? stage.opened : null;
    if (opened !== null) after(opened.link.stop());
    return turn.signal;
  }

  function after(freed: Promise<unknown>): void {
    const before = portFree;
    portFree = Promise.allSettled([before, freed]);
  }

  function giveBack(): void {
    const role = lent;
    lent = null;
    if (role === null) return;
    after(portFree.then(() => options.devices()?.replace(role, options.config()[role])));
  }

  async function listenAt(role: DeviceRole, path: string, signal: AbortSignal): Promise<void> {
    await portFree;
    if (signal.aborted) return;
    const devices = options.devices();
    if (lent !== role && devices?.holderOf(path) === role) {
      lent = role;
      await devices.lend(role);
      if (signal.aborted) return;
    }
    const onStep = (step: ListeningStep): void => enter({ step: 'listening', role, path, ...step });
    const work = recogniseDevice({ role, path, openPort, timers, signal, onStep });
    after(work);
    try {
      const recognised = await work;
      if (!signal.aborted) enter({ step: 'proposals', role, path, ...recognised });
    } catch (error) {
      if (signal.aborted) return;
      const failure = error instanceof OpenFailure ? error : new OpenFailure('other', path, error);
      enter({ step: 'failed', role, path, trouble: failure.remedy });
    }
  }

  async function openLinesAt(signal: AbortSignal): Promise<void> {
    await portFree;
    if (signal.aborted || stage.step !== 'lines') return;
    const { path, baud } = stage;
    enter({ ...stage, opened: openLines({ path, baud, openPort, timers, random, changed }) });
  }

  async function openAt(index: number, signal: AbortSignal): Promise<void> {
    await portFree;
    if (signal.aborted || stage.step !== 'trial' || stage.index !== index) return;
    const { role, path, choice } = stage;
    const told = role === 'wand' ? NOTHING_TOLD : await askFacts(path, choice, signal);
    if (signal.aborted || stage.step !== 'trial' || stage.index !== index) return;
    enter({ ...stage, told, opened: openTrial({ role, path, choice, openPort, timers, random, changed }) });
  }

  /** What a scale that can be asked says of itself; one that cannot be reached now is tried all the same. */
  async function askFacts(path: string, choice: Choice, signal: AbortSignal): Promise<ToldFacts> {
    const { settings, baud, unit } = choice;
    const profile = scaleProfile(choice.profile, settings);
    if (profile?.tellsAbout !== true) return NOTHING_TOLD;
    const sevenBits = settings.line === '7e1';
    const asked = askAbout({ path, baud, profile, sevenBits, openPort, timers, signal });
    after(asked);
    return asked.then(
      (about) => toldFacts(about, unit),
      () => NOTHING_TOLD,
    );
  }

  function background(work: Promise<void>): void {
    work.catch((error: unknown) => options.log('a device set-up failed', error));
  }

  function drop(): null {
    leave();
    enter(IDLE);
    giveBack();
    return null;
  }

  function keep(): Refusal | null {
    if (stage.step !== 'trial') return 'wrong-state';
    const { role, path, choice, opened } = stage;
    if (opened?.link.state.status !== 'ready') return 'scale-not-ready';
    const needs = needsOf(stage);
    if (needs.proof) return 'not-proved';
    if (needs.otherFormat) return 'bench-only';
    if (needs.noTare) return 'tare-word-needed';
    const holder = options.devices()?.holderOf(path) ?? null;
    if (holder !== null && holder !== role) return 'port-in-use';
    const { profile, baud } = choice;
    const settings = stage.neverTared ? { ...choice.settings, noTare: true } : choice.settings;
    if (role === 'wand') options.write('wand', { path, profile: WAND_PROFILE, baud });
    else {
      const some = Object.keys(settings).length > 0;
      const { divisionGrams } = divisionOf(stage.told, opened.steps, stage.countsIn);
      const { capacityGrams } = stage.told;
      options.write(role, {
        path,
        profile,
        baud,
        ...(some && { settings }),
        ...(capacityGrams !== null && { capacityGrams }),
        ...(divisionGrams !== null && { divisionGrams }),
      });
    }
    // The device on trial becomes the role's own: its port is let go and opened anew by the link that counts.
    if (lent !== role) {
      giveBack();
      lent = role;
      // What the role had before says nothing from now on, not even until the new port is open.
      after(Promise.resolve(options.devices()?.lend(role)));
    }
    return drop();
  }

  return {
    look() {
      leave();
      giveBack();
      enter({ step: 'ports', watch: watchPorts(options.listPorts, timers, changed) });
      return null;
    },
    listen(role, path) {
      const holder = options.devices()?.holderOf(path) ?? null;
      if (holder !== null && holder !== role) return 'port-in-use';
      const signal = leave();
      if (lent !== role) giveBack();
      enter({ step: 'listening', role, path, ...firstStep(role) });
      background(listenAt(role, path, signal));
      return null;
    },
    try(role, index) {
      if ((stage.step !== 'proposals' && stage.step !== 'trial') || stage.role !== role) return 'wrong-state';
      const { path, choices, linesBaud } = stage;
      const choice = choices[index];
      if (choice === undefined) return 'no-such-proposal';
      const signal = leave();
      enter({
        step: 'trial',
        role,
        path,
        linesBaud,
        choices,
        index,
        choice,
        opened: null,
        proof: null,
        neverTared: false,
        told: NOTHING_TOLD,
        countsIn: null,
      });
      background(openAt(index, signal));
      return null;
    },
    lines() {
      if ((stage.step !== 'proposals' && stage.step !== 'trial') || stage.role === 'wand')
        return 'wrong-state';
      const { role, path, linesBaud } = stage;
      if (linesBaud === null) return 'no-plain-lines';
      const signal = leave();
      enter({ step: 'lines', role, path, baud: linesBaud, opened: null });
      background(openLinesAt(signal));
      return null;
    },
    patterns() {
      if (stage.step !== 'lines') return 'wrong-state';
      const { role, path, baud, opened } = stage;
      const choices = (opened?.guesses ?? []).map((guess) => choiceOfGuess(guess, role, baud));
      if (choices.length === 0) return 'no-pattern-yet';
      leave();
      enter({ step: 'proposals', role, path, choices, linesBaud: baud });
      return null;
    },
    prove(loadId) {
      if (stage.step !== 'trial' || stage.role === 'wand') return 'wrong-state';
      const proving = prove(stage, stage.role, loadId);
      if (!proving.ok) return proving.why;
      enter({ ...stage, proof: proving.proof, choices: proving.choices });
      return null;
    },
    neverTared() {
      if (stage.step !== 'trial' || !needsOf(stage).noTare) return 'wrong-state';
      enter({ ...stage, neverTared: true });
      return null;
    },
    countsIn(lastDigits) {
      if (stage.step !== 'trial' || stage.role === 'wand' || stage.opened === null) return 'wrong-state';
      const { steps } = stage.opened;
      const offered = USUAL_STEPS.some((each) => each === lastDigits);
      if (!offered || steps.lastDigit === null || !fitsSteps(steps, lastDigits)) return 'no-such-division';
      enter({ ...stage, countsIn: lastDigits });
      return null;
    },
    keep,
    drop,
    remove(role) {
      if (options.config()[role] === undefined) return 'wrong-state';
      options.write(role, undefined);
      if ('role' in stage && stage.role === role) drop();
      background(Promise.resolve(options.devices()?.replace(role, undefined)).then(() => changed()));
      return null;
    },
    view: () => setupView(stage, options.devices()),
    async stop() {
      leave();
      if (alone !== null) timers.clear(alone);
      stage = IDLE;
      await portFree;
    },
  };
}

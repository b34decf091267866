import type { Command, Heard } from '../../../core/speech/command.ts';
import type { MayBeHeard } from '../../../core/speech/may-be-heard.ts';
import type { Saying } from '../../../core/speech/saying.ts';
import type { Ear, EarOptions, Listening } from '../../../hardware/ear/ear.ts';
import type { PcmFormat } from '../../../hardware/ear/pcm.ts';
import { createHearing, type Hearing, type OpenRecorder } from '../../../server/ear/hearing.ts';
import type { EarPage } from '../../../server/ear/page-microphones.ts';
import { createRecordings } from '../../../server/ear/recordings.ts';
import type { EarMessage, EarSettings } from '../../../shared/ear.ts';
import { ManualTimers } from '../../hardware/manual-timers.ts';
import { type TestBarn, testBarn } from './test-barn.ts';

/** An ear that hears what a test says it heard, and remembers what it was told. */
export class FakeEar implements Ear {
  listening: Listening = 'off';
  pid = 1;
  readonly grammars: MayBeHeard[] = [];
  readonly fed: { samples: number; format: PcmFormat }[] = [];
  attending: boolean | null = null;
  speaking = false;
  cuts = 0;
  readonly #tells: Pick<EarOptions, 'onHeard' | 'onListening' | 'keepsSound'>;
  constructor(tells: Pick<EarOptions, 'onHeard' | 'onListening' | 'keepsSound'>) {
    this.#tells = tells;
  }
  start() {
    this.become('starting');
    this.become('waiting');
  }
  /** Shows this from here on. */
  become(listening: Listening) {
    this.listening = listening;
    this.#tells.onListening(listening);
  }
  setGrammar(may: MayBeHeard) {
    this.grammars.push(may);
    return { guessed: [], unsayable: [] };
  }
  attend(attending: boolean) {
    this.attending = attending;
  }
  feed(samples: Int16Array, format: PcmFormat) {
    this.fed.push({ samples: samples.length, format });
  }
  cut() {
    this.cuts += 1;
  }
  settled = async () => {};
  kioskSpeaking(speaking: boolean) {
    this.speaking = speaking;
  }
  async stop() {
    this.become('off');
  }
  /** Tells that it heard this. */
  hear(heard: Heard) {
    this.#tells.onHeard(heard, this.#tells.keepsSound?.() === true ? new Int16Array(1600) : null);
  }
}

const FIT = { overPhones: 0, worstWord: 0, whole: 0, overRivals: 9, overOthers: null };

/** A hearing around a test barn, with an ear that hears what it is told. */
export interface HearingRig {
  readonly test: TestBarn;
  readonly hearing: Hearing;
  readonly timers: ManualTimers;
  /** The ear that is open; throws where none is. */
  readonly ear: FakeEar;
  readonly opened: readonly FakeEar[];
  readonly said: readonly Saying[];
  /** What the page that is listened to was told. */
  readonly sent: readonly EarMessage[];
  readonly page: EarPage;
  readonly logged: readonly string[];
  /** Where the kiosk's own voice stands. */
  readonly voice: { audible: boolean; until: number | null; lastSaid: boolean };
  /** Opens the page's microphone and holds the key to talk. */
  press(): void;
  /** A command is heard. */
  command(command: Command, words?: string): void;
}

/** Sets up a hearing. */
export function hearingRig(
  extra: {
    readonly test?: TestBarn;
    readonly engine?: boolean;
    readonly openRecorder?: OpenRecorder;
    readonly mayGive?: boolean;
    readonly folder?: string;
  } = {},
): HearingRig {
  const test = extra.test ?? testBarn();
  const timers = new ManualTimers();
  const opened: FakeEar[] = [];
  const said: Saying[] = [];
  const sent: EarMessage[] = [];
  const logged: string[] = [];
  const voice: HearingRig['voice'] = { audible: true, until: null, lastSaid: true };
  const hearing = createHearing({
    barn: test.barn,
    speaker: {
      say: (saying) => said.push(saying),
      sayAgain: () => voice.lastSaid,
      audible: () => voice.audible,
      soundingUntil: () => voice.until,
    },
    timers,
    openEar:
      extra.engine === false
        ? null
        : (tells) => {
            const ear = new FakeEar(tells);
            opened.push(ear);
            return ear;
          },
    openRecorder: extra.openRecorder ?? null,
    recordings: createRecordings(extra.folder ?? null),
    log: (message) => logged.push(message),
    mayGive: extra.mayGive ?? true,
  });
  const page: EarPage = { own: true, send: (message) => sent.push(message) };
  const rig: HearingRig = {
    test,
    hearing,
    timers,
    opened,
    said,
    sent,
    page,
    logged,
    voice,
    get ear() {
      const ear = opened.at(-1);
      if (ear === undefined) throw new Error('no ear was opened');
      return ear;
    },
    press() {
      hearing.told(page, { type: 'microphone', rate: 16_000, channels: 1 });
      hearing.told(page, { type: 'talk', on: true });
    },
    command(command, words = command.kind) {
      rig.ear.hear({ kind: 'command', command, words: words.split(' '), fit: FIT });
      hearing.look();
    },
  };
  return rig;
}

/** Sets the ear as at Shed; what is left out is as it comes. */
export function setEar(rig: HearingRig, ear: Partial<EarSettings>): void {
  rig.test.send({ type: 'set-ear', ear: { mode: 'press', key: null, recording: false, ...ear } });
  rig.hearing.look();
}

/** Has a jug proved in hand, and nobody on the platform. */
export function jugInHand(rig: HearingRig): void {
  rig.test.send({ type: 'take-jug', jugId: 'jug-1' });
  rig.test.send({ type: 'prove-jug', jugId: 'jug-1', deliberate: false });
  rig.hearing.look();
}

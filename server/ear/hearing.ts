import { showNumber } from '../../core/quantity/show.ts';
import type { Command, Heard } from '../../core/speech/command.ts';
import { interpret, type SpokenRefusal } from '../../core/speech/interpret.ts';
import type { Saying } from '../../core/speech/saying.ts';
import type { Recorder, RecorderOptions } from '../../hardware/ear/alsa-recorder.ts';
import type { Ear, EarOptions, Listening } from '../../hardware/ear/ear.ts';
import { EAR_RATE, type PcmFormat } from '../../hardware/ear/pcm.ts';
import type { TimerHandle, Timers } from '../../hardware/serial/timers.ts';
import type { EarView, MicrophoneMessage, PageWish } from '../../shared/ear.ts';
import type { Barn } from '../barn/barn.ts';
import type { Speaker } from '../speech/speaker.ts';
import { Attention } from './attention.ts';
import { heardWords, refusedWords } from './heard-words.ts';
import { hearingScene } from './hearing-scene.ts';
import { type Outcome, obey } from './obey.ts';
import { type EarPage, PageMicrophones } from './page-microphones.ts';
import { createPhrases, type Phrases } from './phrases.ts';
import type { Recordings } from './recordings.ts';
import { createAllowance, samplesIn } from './sound-frame.ts';

/** Makes an ear that tells these. */
export type OpenEar = (tells: Pick<EarOptions, 'onHeard' | 'onListening' | 'keepsSound'>) => Ear;
/** Opens the board's own microphone. */
export type OpenRecorder = (tells: Pick<RecorderOptions, 'onSound' | 'onRunning'>) => Recorder;

/** What the hearing of a kiosk is made of. */
export interface HearingOptions {
  readonly barn: Barn;
  readonly speaker: Pick<Speaker, 'say' | 'sayAgain' | 'audible' | 'soundingUntil'>;
  readonly timers: Timers;
  /** `null` where no engine is installed. */
  readonly openEar: OpenEar | null;
  /** `null` where the board has no microphone to be used. */
  readonly openRecorder: OpenRecorder | null;
  readonly recordings: Recordings;
  /** Whether a dose may be logged by its read-back. */
  readonly mayGive: boolean;
  readonly log: (message: string, error: unknown) => void;
}

/** The hearing of a kiosk: from the sound of a microphone to what was asked for, done. */
export interface Hearing {
  /** Looks what changed in the barn: settings, what may be said, whether the kiosk itself speaks. */
  look(): void;
  /** Takes what a page tells of its microphone and its key to talk. */
  told(page: EarPage, message: MicrophoneMessage): void;
  /** Takes the sound of a page, as it came over the wire. */
  sound(page: EarPage, frame: Uint8Array): void;
  /** A page is gone. */
  gone(page: EarPage): void;
  view(): EarView;
  stop(): Promise<void>;
}

/** An engine that is not up by then does not stay up. */
const STARTS_WITHIN_MS = 60_000;
/** How long the question what happened may be answered aloud. */
const ASKED_MS = 30_000;
/** How long sound in no good form is told of after the last of it. */
const BAD_SOUND_MS = 5000;
/** After the key is up, sound that does not come for so long will not come. */
const RELEASED_MS = 300;
/** A sentence whose sound stops for so long is not gone on with; a busy board may stand still for a second or two. */
const STALLED_MS = 5000;
const BOARD_FORMAT: PcmFormat = { rate: EAR_RATE, channels: 1 };

/** The hearing of a barn; it opens ear and microphone when it first looks. */
export function createHearing(options: HearingOptions): Hearing {
  const { barn, speaker, timers } = options;
  const { context } = barn;
  const pages = new PageMicrophones();
  const attention = new Attention();
  let allowance = createAllowance();
  let ear: Ear | null = null;
  let phrases: Phrases | null = null;
  let recorder: Recorder | null = null;
  let boardHears = false;
  let listening: Listening = 'off';
  let startingSince: number | null = null;
  let deaf = false;
  let silence: TimerHandle | null = null;
  let asked: { readonly treatmentId: string; readonly until: number } | null = null;
  let badSoundAt: number | null = null;
  let soundAt = 0;
  let releasing: TimerHandle | null = null;
  let last: EarView['heard'] = null;
  let stopped = false;

  const now = () => context.clock.now().uptimeMs;
  const settings = () => context.memory.settings.ear;
  const language = () => context.memory.settings.language;
  const takes = () => attention.takes(settings().mode, now());

  function source(): EarView['source'] {
    if (pages.current !== null) return 'page';
    return boardHears ? 'board' : null;
  }

  function scene() {
    if (asked !== null && now() >= asked.until) asked = null;
    return hearingScene(context, {
      aloud: speaker.audible(),
      asked: asked?.treatmentId ?? null,
      mayGive: options.mayGive,
    });
  }

  function look(): void {
    if (stopped) return;
    const { mode } = settings();
    followSource(mode !== 'off');
    if (mode === 'off') void close();
    else if (source() !== null) open();
    attention.hold(pages.talking);
    followOwnVoice();
    if (ear === null) return;
    if (listening === 'hearing' && now() - soundAt > STALLED_MS) ear.cut();
    ear.attend(attention.listens(mode));
    phrases?.look(scene(), takes() || mode === 'press');
  }

  function followSource(wanted: boolean): void {
    const useBoard = wanted && pages.current === null && options.openEar !== null;
    if (!useBoard) {
      recorder?.stop();
      recorder = null;
      boardHears = false;
    } else if (recorder === null && options.openRecorder !== null) {
      recorder = options.openRecorder({
        onSound: (samples) => hear(samples, BOARD_FORMAT),
        onRunning(running) {
          boardHears = running;
          barn.changed();
        },
      });
    }
  }

  function hear(samples: Int16Array, format: PcmFormat): void {
    soundAt = now();
    ear?.feed(samples, format);
  }

  function open(): void {
    if (ear !== null || options.openEar === null) return;
    const opened = options.openEar({
      onHeard,
      onListening(next) {
        if (ear !== opened) return;
        listening = next;
        startingSince = next === 'starting' ? (startingSince ?? now()) : null;
        barn.changed();
      },
      keepsSound: () => settings().recording,
    });
    ear = opened;
    phrases = createPhrases((may) => opened.setGrammar(may));
    phrases.look(scene(), settings().mode === 'press');
    opened.start();
    listening = opened.listening;
    startingSince = now();
    deaf = false;
    followOwnVoice();
  }

  function close(): Promise<void> {
    const closing = ear;
    ear = null;
    phrases = null;
    listening = 'off';
    startingSince = null;
    attention.sleep();
    return closing?.stop() ?? Promise.resolve();
  }

  /** While the kiosk speaks, and until what it is about to say is over, nothing it hears is the keeper's. */
  function followOwnVoice(): void {
    const until = speaker.soundingUntil();
    if (until !== null) {
      if (silence !== null) timers.clear(silence);
      silence = timers.set(look, Math.max(1, until - now()));
    }
    const speaks = until !== null;
    attention.speaking(speaks, now());
    if (speaks === deaf) return;
    deaf = speaks;
    ear?.kioskSpeaking(speaks);
  }

  function onHeard(heard: Heard, sound: Int16Array | null): void {
    if (sound !== null) keep(heard, sound);
    if (heard.kind === 'rejected') notUnderstood(heard);
    else understood(heard.command, heard.words);
  }

  function keep(heard: Heard, sound: Int16Array): void {
    const takenFor = heard.kind === 'command' ? heard.words : [heard.why, ...heard.words];
    try {
      options.recordings.add(sound, Math.round(context.clock.now().wallMs), takenFor.join(' '));
    } catch (error) {
      options.log('what was heard could not be recorded', error);
    }
  }

  function notUnderstood({ why, words }: Extract<Heard, { kind: 'rejected' }>): void {
    const pressed = settings().mode === 'press';
    if (!pressed && !takes()) return;
    if (why === 'kiosk-speaking') {
      tell(words, { outcome: 'not-understood', sentence: heardWords('kiosk-was-speaking', language()) });
    } else if (words.length > 0 && why !== 'too-short') {
      tell(words, { outcome: 'not-understood', sentence: heardWords('not-understood', language()) });
      // Where the key is held it was meant for the kiosk; a woken one hears much that was not.
      if (pressed) speaker.say({ what: 'not-understood' });
    }
  }

  function understood(command: Command, words: readonly string[]): void {
    attention.heard(now());
    const became = interpret(command, scene());
    if (became.ok) {
      const outcome = obey(became.wish, { barn, speaker, tellPage });
      if (became.wish.type === 'undo' && outcome.outcome === 'done') {
        asked = { treatmentId: became.wish.treatmentId, until: now() + ASKED_MS };
      }
      tell(words, outcome);
    } else {
      speaker.say(sayingOf(became.refusal));
      tell(words, { outcome: 'refused', sentence: refusedWords(became.refusal, language()) });
    }
    // At once: whatever the kiosk says of it comes before the next is heard.
    followOwnVoice();
  }

  function tellPage(wish: PageWish): boolean {
    const page = pages.screen;
    page?.send({ type: 'spoken-wish', wish });
    return page !== null;
  }

  function tell(words: readonly string[], outcome: Outcome): void {
    last = { number: (last?.number ?? 0) + 1, words: words.join(' '), ...outcome };
    barn.changed();
  }

  /** What is missing of a sentence may be the point of a dose: it is not judged by the rest. */
  function badSound(): void {
    ear?.cut();
    const told = badSoundAt !== null && now() - badSoundAt < BAD_SOUND_MS;
    badSoundAt = now();
    if (told) return;
    options.log('a page sent sound that cannot be taken', null);
    barn.changed();
  }

  /** A page may close its microphone with the key: what was said by then ends in silence. */
  function released(): void {
    if (releasing !== null) timers.clear(releasing);
    releasing = timers.set(() => {
      releasing = null;
      if (listening !== 'hearing' || pages.talking || now() - soundAt < RELEASED_MS) return;
      ear?.feed(new Int16Array(EAR_RATE), BOARD_FORMAT);
    }, RELEASED_MS);
  }

  function trouble(): EarView['trouble'] {
    if (settings().mode === 'off') return null;
    if (options.openEar === null) return 'no-engine';
    if (badSoundAt !== null && now() - badSoundAt < BAD_SOUND_MS) return 'bad-sound';
    if (source() === null) return pages.trouble;
    return startingSince !== null && now() - startingSince > STARTS_WITHIN_MS ? 'engine-failing' : null;
  }

  return {
    look,
    told(page, message) {
      const before = pages.current?.page;
      pages.told(page, message);
      const after = pages.current?.page;
      if (after !== before) allowance = createAllowance();
      if (after !== before && after !== undefined) ear?.cut();
      if (!pages.talking) released();
      barn.changed();
      // A key that is pressed is spoken into at once.
      look();
    },
    sound(page, frame) {
      const { current } = pages;
      if (current?.page !== page || settings().mode === 'off') return;
      const { rate, channels } = current.format;
      const samples = samplesIn(frame);
      if (samples === null || !allowance.take((1000 * samples.length) / (rate * channels), now())) {
        badSound();
        return;
      }
      hear(samples, current.format);
    },
    gone(page) {
      if (pages.current?.page === page) ear?.cut();
      pages.gone(page);
      barn.changed();
      look();
    },
    view() {
      const ready = listening === 'waiting' || listening === 'hearing';
      return {
        ...settings(),
        listening,
        open: ready && source() !== null && takes(),
        source: source(),
        trouble: trouble(),
        ...(phrases?.shown() ?? { phrases: [], leftOut: [] }),
        heard: last,
        recordedBytes: options.recordings.bytes(),
      };
    },
    async stop() {
      stopped = true;
      if (silence !== null) timers.clear(silence);
      if (releasing !== null) timers.clear(releasing);
      recorder?.stop();
      await close();
    },
  };
}

/** A refusal as it is said aloud. */
function sayingOf(refusal: SpokenRefusal): Saying {
  if (refusal.why !== 'wrong-volume') return { what: 'not-done', why: refusal.why };
  const { saidMl, shownMl } = refusal;
  return { what: 'wrong-number', heard: volume(saidMl), wanted: volume(shownMl) };
}

function volume(millilitres: number): string {
  return `${showNumber(millilitres, 3)} mL`;
}

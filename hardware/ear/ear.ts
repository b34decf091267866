import type { Heard } from '../../core/speech/command.ts';
import { type Decoded, isSpoken, type PathPart, wordsOf } from '../../core/speech/decoded.ts';
import { canGoOn, commandFrom } from '../../core/speech/interpret.ts';
import { type Grammar, grammarOf } from '../../core/speech/jsgf.ts';
import { judge, toHearAgain } from '../../core/speech/judge.ts';
import type { MayBeHeard } from '../../core/speech/may-be-heard.ts';
import { otherReadBacks } from '../../core/speech/other-read-backs.ts';
import type { Dictionary } from '../../core/speech/pronounce.ts';
import { rivalGrammar } from '../../core/speech/rivals.ts';
import type { TimerHandle, Timers } from '../serial/timers.ts';
import { createGate, type GateEvent, joined } from './gate.ts';
import { type Listener, startListener } from './listener.ts';
import { createResampler, EAR_RATE, type PcmFormat, type Resampler } from './pcm.ts';

/** What the ear does now: shown, so that a keeper knows whether talking is of use. */
export type Listening = 'off' | 'starting' | 'waiting' | 'hearing' | 'kiosk-speaking';

/** What an ear needs, and whom it tells. */
export interface EarOptions {
  /** The compiled `listener.c`, and what it is started with. */
  readonly program: string;
  readonly args: readonly string[];
  readonly dictionary: Dictionary;
  readonly timers: Timers;
  /** 0 (included) to 1 (excluded), for the jitter of restarts. */
  readonly random: () => number;
  /** Called once for each stretch of speech, with its sound where that is asked for. The grammar of its beginning counts. */
  readonly onHeard: (heard: Heard, sound: Int16Array | null) => void;
  readonly onListening: (listening: Listening) => void;
  /** Whether the sound of what begins now is wanted; left out, never. */
  readonly keepsSound?: () => boolean;
}

/** Hears phrases in a stream of sound. Sound is judged and forgotten, unless it is asked for. */
export interface Ear {
  readonly listening: Listening;
  readonly pid: number | undefined;
  /** Begins to listen; does nothing when it already does. */
  start(): void;
  /**
   * What may be heard from here on, and what of it is guessed or cannot be said. Speech that has begun is still heard
   * by what could be said when it began.
   */
  setGrammar(may: MayBeHeard): Pick<Grammar, 'guessed' | 'unsayable'>;
  /**
   * Whether what is said from here on is meant for it; it is until told otherwise. Unattending it only learns how
   * loud the barn is; speech that has begun is heard to its end.
   */
  attend(attending: boolean): void;
  /** Samples as they come from a microphone, in pieces of any length. Throws a `RangeError` for a format out of bounds. */
  feed(samples: Int16Array, format: PcmFormat): void;
  /** The sound breaks off here: what was being heard is dropped, since its other half may never come. */
  cut(): void;
  /** Resolves when all sound fed so far is worked through: for those who feed faster than a microphone does. */
  settled(): Promise<void>;
  /** Deafens it while the kiosk's own voice is in the room, and for a moment after. */
  kioskSpeaking(speaking: boolean): void;
  /** Ends it for good. */
  stop(): Promise<void>;
}

/** What is being heard: what could be said when it began, and how its words settle. Times in ms of sound. */
interface Utterance {
  readonly may: MayBeHeard;
  /** Its sound so far, where that is asked for. */
  readonly sound: Int16Array[] | null;
  heardMs: number;
  askedMs: number;
  quietMs: number;
  last: string;
  sinceMs: number;
}

/**
 * Words that stand for so long while it is quiet are all there was, in ms of sound; the second where more could
 * follow, as "point five" after "three". What stands for {@link NOISE_MS} more in a noise is believed too.
 */
const ENDED_MS = 120;
const MAY_GO_ON_MS = 300;
const NOISE_MS = 300;
/** How often it is asked what the words are so far, in ms of sound. */
const ASK_EVERY_MS = 30;
/** What the walls still say of the kiosk's own voice, in ms. */
const ECHO_MS = 400;

/** An ear at rest; `start` opens it. */
export function createEar(options: EarOptions): Ear {
  const { timers, dictionary } = options;
  const gate = createGate();
  let listener: Listener | null = null;
  let listening: Listening = 'off';
  let resampler: { of: string; turn: Resampler } | null = null;
  let may: MayBeHeard = { phrases: [], given: null, leftOut: [] };
  let grammar: Grammar = grammarOf(may, dictionary);
  let told: Grammar | null = null;
  let deaf = false;
  let attending = true;
  let unmute: TimerHandle | null = null;
  let now: Utterance | null = null;
  /** Utterances that have ended and are not judged yet, oldest first; `null` where it no longer counts. */
  let awaiting: (Pick<Utterance, 'may' | 'sound'> | null)[] = [];
  /** A read-back that is being heard again, to see how near other numbers are. */
  let again: (Pick<Utterance, 'may' | 'sound'> & { readonly decoded: Decoded }) | null = null;

  function tell(next: Listening): void {
    if (next === listening) return;
    listening = next;
    options.onListening(next);
  }

  function idle(): void {
    if (listener === null) tell('off');
    else if (deaf) tell('kiosk-speaking');
    else tell(listener.ready ? 'waiting' : 'starting');
  }

  function onReady(ready: boolean): void {
    if (!ready) {
      now = null;
      awaiting = [];
      again = null;
      gate.shut();
    }
    idle();
  }

  function take(event: GateEvent): void {
    switch (event.kind) {
      case 'opened':
        beginUtterance(event.samples);
        break;
      case 'samples':
        goOn(event.samples, event.quietMs);
        break;
      case 'closed':
        endUtterance();
        break;
    }
  }

  function beginUtterance(samples: Int16Array): void {
    if (listener === null) return;
    if (told !== grammar) {
      told = grammar;
      listener.use(grammar);
    }
    const sound = options.keepsSound?.() === true ? [samples] : null;
    now = { may, sound, heardMs: 0, askedMs: 0, quietMs: 0, last: '', sinceMs: 0 };
    tell('hearing');
    listener.begin();
    listener.hear(samples);
  }

  function goOn(samples: Int16Array, quietMs: number): void {
    if (listener === null || now === null) return;
    listener.hear(samples);
    now.sound?.push(samples);
    now.heardMs += (1000 * samples.length) / EAR_RATE;
    now.quietMs = quietMs;
    if (now.heardMs - now.askedMs < ASK_EVERY_MS) return;
    now.askedMs = now.heardMs;
    listener.ask();
  }

  function onSoFar(path: readonly PathPart[] | null, frames: number): void {
    if (now === null || path === null) return;
    const words = wordsOf(path);
    const lastFrame = path.findLast(isSpoken)?.to ?? 0;
    const settled = `${words.join(' ')} ${lastFrame}`;
    if (settled !== now.last) {
      now.last = settled;
      now.sinceMs = now.heardMs;
    }
    if (commandFrom(words, now.may) === null) return;
    // Words may stand while the last of them goes on, and be found anew long after they ended: both clocks count.
    const still = Math.max(now.heardMs - now.sinceMs, 10 * (frames - 1 - lastFrame));
    const least = canGoOn(words, now.may) ? MAY_GO_ON_MS : ENDED_MS;
    if (still >= least && (now.quietMs >= least || still >= least + NOISE_MS)) endUtterance();
  }

  function endUtterance(): void {
    if (now === null || listener === null) return;
    awaiting.push(now);
    now = null;
    gate.shut();
    listener.end();
    idle();
  }

  function onEnded(decoded: Decoded): void {
    const could = awaiting.shift() ?? null;
    if (could === null) return;
    const words = toHearAgain(decoded, could.may);
    // Where the next has begun already its sound is gone, and it is not believed.
    if (words === null || now !== null || awaiting.length > 0) {
      conclude(decoded, could);
      return;
    }
    again = { ...could, decoded };
    listener?.hearAgain(otherReadBacks(words));
  }

  function onAgain(others: readonly PathPart[] | null): void {
    const could = again;
    again = null;
    if (could !== null) conclude({ ...could.decoded, others }, could);
  }

  function conclude(decoded: Decoded, could: Pick<Utterance, 'may' | 'sound'>): void {
    const heard = judge(decoded, could.may);
    // The next utterance may have begun already; then the lesson is lost, and another will come.
    if (heard.kind === 'command' && now === null) listener?.keep();
    options.onHeard(heard, could.sound === null ? null : joined(could.sound));
  }

  function dropUtterance(): void {
    if (now === null) return;
    awaiting.push(null);
    listener?.end();
    now = null;
  }

  /** Cut off by the kiosk's own voice: what was heard may be its, not the keeper's. */
  function abandon(): void {
    const pending = again !== null || awaiting.some((could) => could !== null);
    if (now === null && !pending) return;
    again = null;
    awaiting = awaiting.map(() => null);
    dropUtterance();
    options.onHeard({ kind: 'rejected', why: 'kiosk-speaking', words: [], fit: null }, null);
  }

  function unmuted(): void {
    unmute = null;
    deaf = false;
    idle();
  }

  return {
    get listening() {
      return listening;
    },
    get pid() {
      return listener?.pid;
    },
    start() {
      if (listener !== null) return;
      told = grammar;
      listener = startListener({
        program: options.program,
        args: options.args,
        timers,
        random: options.random,
        rivals: rivalGrammar(dictionary),
        onReady,
        onSoFar,
        onEnded,
        onAgain,
      });
      listener.use(grammar);
      idle();
    },
    setGrammar(next) {
      may = next;
      grammar = grammarOf(next, dictionary);
      if (now === null && listener !== null) {
        told = grammar;
        listener.use(grammar);
      }
      return grammar;
    },
    attend(on) {
      attending = on;
    },
    feed(samples, format) {
      const of = `${format.rate}/${format.channels}`;
      if (resampler?.of !== of) resampler = { of, turn: createResampler(format) };
      const sound = resampler.turn.push(samples);
      if (listener === null || !listener.ready || deaf) return;
      for (const event of gate.push(sound, attending)) take(event);
    },
    cut() {
      gate.shut();
      dropUtterance();
      idle();
    },
    settled: () => listener?.settled() ?? Promise.resolve(),
    kioskSpeaking(on) {
      // The echo's end is an event, not a time to compare with: an alarm may ring a moment early.
      if (unmute !== null) timers.clear(unmute);
      unmute = on ? null : timers.set(unmuted, ECHO_MS);
      deaf = true;
      gate.shut();
      abandon();
      idle();
    },
    async stop() {
      const last = listener;
      listener = null;
      now = null;
      awaiting = [];
      again = null;
      if (unmute !== null) timers.clear(unmute);
      await last?.stop();
      tell('off');
    },
  };
}

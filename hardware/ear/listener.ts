import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import type { Decoded, PathPart } from '../../core/speech/decoded.ts';
import type { Grammar } from '../../core/speech/jsgf.ts';
import { retryDelayMs } from '../serial/backoff.ts';
import type { TimerHandle, Timers } from '../serial/timers.ts';
import { type Answer, readAnswer } from './answers.ts';
import { bytesOf, messageOf } from './framing.ts';

/** What a listener needs, and whom it tells. */
export interface ListenerOptions {
  /** The compiled `listener.c`. */
  readonly program: string;
  readonly args: readonly string[];
  readonly timers: Timers;
  /** 0 (included) to 1 (excluded), for the jitter of restarts. */
  readonly random: () => number;
  /** Everyday words as a grammar, with their sounds: held against every sound, whatever may be heard. */
  readonly rivals: Grammar;
  /** Called when it begins to be able to hear, and when it no longer is. What was being heard is lost with it. */
  readonly onReady: (ready: boolean) => void;
  /** The path so far, and how many frames of 10 ms it was looked for in. */
  readonly onSoFar: (path: readonly PathPart[] | null, frames: number) => void;
  readonly onEnded: (decoded: Decoded) => void;
  /** What the last utterance was heard as by another grammar, or `null` where it fits none of it. */
  readonly onAgain: (path: readonly PathPart[] | null) => void;
}

/** One decoder process, started again whenever it ends, hangs or talks nonsense. */
export interface Listener {
  readonly ready: boolean;
  readonly pid: number | undefined;
  /** What may be heard from here on; must not be called within an utterance. Kept, and told again after a restart. */
  use(grammar: Grammar): void;
  begin(): void;
  hear(samples: Int16Array): void;
  /** Asks for the path so far; at most one question is open at a time. */
  ask(): void;
  end(): void;
  /** Hears the utterance that ended last by another grammar of the same words; must not be called within one. */
  hearAgain(jsgf: string): void;
  /** The utterance just ended was a voice: the next ones begin with what it taught of the microphone. */
  keep(): void;
  /** Resolves when everything asked of it is answered, or lost with the process. */
  settled(): Promise<void>;
  /** Ends it for good. No listener is called once this was called. */
  stop(): Promise<void>;
}

/** An answer takes milliseconds, and a second on a board with much else to do; after so long the process hangs. */
const HANGS_AFTER_MS = 15_000;
/** To start it reads its model from the card, and learns hundreds of words. */
const STARTS_WITHIN_MS = 90_000;

/** Starts a listener; it never gives up by itself. */
export function startListener(options: ListenerOptions): Listener {
  const { timers } = options;
  let child: ChildProcessWithoutNullStreams | null = null;
  let grammar: Grammar | null = null;
  let up = false;
  let ready = false;
  let stopped = false;
  let failures = 0;
  let asking = false;
  /** Answers the process owes, and the alarm for the oldest of them. */
  let owed = 0;
  let waiting: (() => void)[] = [];
  let alarm: TimerHandle | null = null;
  let retry: TimerHandle | null = null;

  function begin(): void {
    const started = spawn(options.program, options.args, { stdio: ['pipe', 'pipe', 'pipe'] });
    child = started;
    up = false;
    asking = false;
    owed = 0;
    // Writing to a process that has just died is no news: its exit is.
    started.stdin.on('error', () => {});
    started.stderr.resume();
    createInterface({ input: started.stdout }).on('line', (line) => {
      if (child === started) take(readAnswer(line));
    });
    started.once('error', () => lost(started));
    started.once('close', () => lost(started));
    owe();
  }

  function lost(which: ChildProcessWithoutNullStreams): void {
    if (child !== which) return;
    child = null;
    owed = 0;
    setAlarm(false);
    settle();
    const delay = retryDelayMs(failures, options.random);
    failures += 1;
    tellReady(false);
    if (!stopped) retry = timers.set(begin, delay);
  }

  function kill(): void {
    const doomed = child;
    if (doomed === null) return;
    doomed.kill('SIGKILL');
    lost(doomed);
  }

  function take(answer: Answer | null): void {
    if (answer === null) {
      kill();
      return;
    }
    owed = Math.max(0, owed - 1);
    setAlarm(owed > 0);
    obey(answer);
    settle();
  }

  function obey(answer: Answer): void {
    switch (answer.kind) {
      case 'ready':
        up = true;
        teach(options.rivals, 'R');
        if (grammar !== null) teach(grammar, 'G');
        return;
      case 'grammar':
        if (!answer.ok) {
          kill();
          return;
        }
        if (answer.of === 'commands') tellReady(true);
        return;
      case 'so-far':
        asking = false;
        options.onSoFar(answer.commands, answer.frames);
        return;
      case 'ended':
        failures = 0;
        options.onEnded(answer);
        return;
      case 'again':
        if (answer.ok) options.onAgain(answer.path);
        else kill();
        return;
    }
  }

  function settle(): void {
    if (owed > 0) return;
    for (const resolve of waiting) resolve();
    waiting = [];
  }

  function teach({ jsgf, pronunciations }: Grammar, as: 'G' | 'R'): void {
    const lines = [...pronunciations].flatMap(([word, sounds]) =>
      sounds.map((phones, at) => `${at === 0 ? word : `${word}(${at + 1})`} ${phones}`),
    );
    write(messageOf('W', lines.join('\n')));
    write(messageOf(as, jsgf));
    owe();
  }

  function write(message: Buffer): void {
    child?.stdin.write(message);
  }

  function owe(): void {
    owed += 1;
    if (owed === 1) setAlarm(true);
  }

  function setAlarm(on: boolean): void {
    if (alarm !== null) timers.clear(alarm);
    alarm = on ? timers.set(kill, ready ? HANGS_AFTER_MS : STARTS_WITHIN_MS) : null;
  }

  function tellReady(now: boolean): void {
    if (ready === now) return;
    ready = now;
    if (!stopped) options.onReady(now);
  }

  begin();
  return {
    get ready() {
      return ready;
    },
    get pid() {
      return child?.pid;
    },
    use(next) {
      grammar = next;
      // A process not up yet is told when it is.
      if (child !== null && up) teach(next, 'G');
    },
    begin: () => write(messageOf('U')),
    hear: (samples) => write(messageOf('A', bytesOf(samples))),
    ask() {
      if (asking || child === null) return;
      asking = true;
      write(messageOf('P'));
      owe();
    },
    end() {
      if (child === null) return;
      write(messageOf('E'));
      owe();
    },
    hearAgain(jsgf) {
      if (child === null) return;
      write(messageOf('V', jsgf));
      owe();
    },
    keep: () => write(messageOf('K')),
    settled: () => (owed === 0 ? Promise.resolve() : new Promise((resolve) => waiting.push(resolve))),
    stop() {
      stopped = true;
      if (retry !== null) timers.clear(retry);
      setAlarm(false);
      const last = child;
      child = null;
      ready = false;
      owed = 0;
      settle();
      if (last === null) return Promise.resolve();
      return new Promise((resolve) => {
        last.once('close', () => resolve());
        last.kill('SIGKILL');
      });
    },
  };
}

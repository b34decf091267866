import { type ChildProcess, spawn } from 'node:child_process';
import { retryDelayMs } from '../serial/backoff.ts';
import type { TimerHandle, Timers } from '../serial/timers.ts';
import { samplesOf } from './framing.ts';
import { EAR_RATE } from './pcm.ts';

/** What a recorder needs, and whom it tells. */
export interface RecorderOptions {
  /** The ALSA name of the microphone, such as "default" or "plughw:1,0". */
  readonly device: string;
  /** Left out, `arecord`. */
  readonly program?: string;
  readonly timers: Timers;
  /** 0 (included) to 1 (excluded), for the jitter of restarts. */
  readonly random: () => number;
  /** 16 kHz mono, in pieces of any length. */
  readonly onSound: (samples: Int16Array) => void;
  /** Called when sound begins to come, and when it ends; it is tried again then. */
  readonly onRunning: (running: boolean) => void;
}

/** The board's own microphone. */
export interface Recorder {
  /** Ends it for good. */
  stop(): void;
}

/** Listens on the board's own microphone with `arecord`, started again whenever it ends. */
export function startRecorder(options: RecorderOptions): Recorder {
  const { device, program = 'arecord', timers } = options;
  let child: ChildProcess | null = null;
  let retry: TimerHandle | null = null;
  let failures = 0;
  let running = false;
  let stopped = false;

  function tell(now: boolean): void {
    if (now === running) return;
    running = now;
    if (!stopped) options.onRunning(now);
  }

  function begin(): void {
    const format = ['-t', 'raw', '-f', 'S16_LE', '-r', String(EAR_RATE), '-c', '1'];
    const started = spawn(program, ['-q', '-D', device, ...format], { stdio: ['ignore', 'pipe', 'ignore'] });
    child = started;
    let odd: Uint8Array = new Uint8Array(0);
    started.stdout.on('data', (bytes: Buffer) => {
      if (child !== started) return;
      failures = 0;
      tell(true);
      const all = Buffer.concat([odd, bytes]);
      odd = all.subarray(all.length - (all.length % 2));
      options.onSound(samplesOf(all));
    });
    started.once('error', () => lost(started));
    started.once('close', () => lost(started));
  }

  function lost(which: ChildProcess): void {
    if (child !== which) return;
    child = null;
    tell(false);
    if (stopped) return;
    retry = timers.set(begin, retryDelayMs(failures, options.random));
    failures += 1;
  }

  begin();
  return {
    stop() {
      stopped = true;
      if (retry !== null) timers.clear(retry);
      child?.kill('SIGKILL');
      child = null;
    },
  };
}

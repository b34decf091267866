import { type ChildProcess, spawn } from 'node:child_process';
import type { Wav } from './wav.ts';

/** A sound that is being played. */
export interface Playing {
  /** Resolves when it is over: `true` where it was played to its end or cut off on purpose. */
  readonly ended: Promise<boolean>;
  /** Cuts it off. */
  cut(): void;
}

/**
 * Plays a sound on the board's own loudspeaker with `aplay`, where no screen does.
 *
 * `device` is an ALSA name such as "default" or "plughw:1,0".
 */
export function playOnAlsa(wav: Wav, device: string, program = 'aplay'): Playing {
  const child: ChildProcess = spawn(program, ['-q', '-D', device, '-'], {
    stdio: ['pipe', 'ignore', 'ignore'],
  });
  let cutOff = false;
  child.stdin?.on('error', () => {});
  child.stdin?.end(wav.bytes);
  return {
    ended: new Promise((resolve) => {
      child.on('error', () => resolve(false));
      child.on('close', (code) => resolve(cutOff || code === 0));
    }),
    cut() {
      cutOff = true;
      child.kill('SIGKILL');
    },
  };
}

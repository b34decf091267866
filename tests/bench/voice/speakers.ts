import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { monoSamples, readWave } from './wave.ts';

/** A synthetic voice: nobody real speaks in this bench. */
export interface Speaker {
  readonly name: string;
  readonly program: 'flite' | 'espeak-ng';
  readonly args: readonly string[];
  /** Whether thresholds were chosen on this voice; figures are told of the others alone. */
  readonly set: 'tune' | 'held-out';
}

const flite = (voice: string, set: Speaker['set'], ...more: string[]): Speaker => ({
  name: [`flite ${voice}`, ...more.filter((arg) => arg.includes('='))].join(' '),
  program: 'flite',
  args: ['-voice', voice, ...more],
  set,
});
const espeak = (voice: string, speed: number, set: Speaker['set']): Speaker => ({
  name: `espeak ${voice}`,
  program: 'espeak-ng',
  args: ['-v', voice, '-s', String(speed)],
  set,
});

/** Four recorded-voice synthesisers, each at its own and at another pace, and four of the formant kind. */
export const SPEAKERS: readonly Speaker[] = [
  flite('kal16', 'tune'),
  flite('slt', 'tune'),
  flite('slt', 'tune', '--setf', 'duration_stretch=1.25', '--setf', 'int_f0_target_mean=200'),
  espeak('en-us+m3', 135, 'tune'),
  espeak('en-us+f2', 150, 'tune'),
  flite('awb', 'held-out'),
  flite('rms', 'held-out'),
  flite('rms', 'held-out', '--setf', 'duration_stretch=0.85', '--setf', 'int_f0_target_mean=125'),
  espeak('en-us+m7', 145, 'held-out'),
  espeak('en-gb-x-rp+f4', 140, 'held-out'),
];

/** Where spoken sentences are kept between runs, so that a second run needs no synthesiser. */
const CACHE = join(tmpdir(), 'byreside-voices');

/** A sentence as this speaker says it, 16 kHz mono. Throws where the synthesiser is missing or fails. */
export function speak(speaker: Speaker, text: string): Int16Array {
  mkdirSync(CACHE, { recursive: true });
  const key = createHash('sha1')
    .update(JSON.stringify([speaker.program, speaker.args, text]))
    .digest('hex');
  const path = join(CACHE, `${key}.wav`);
  if (!existsSync(path)) synthesise(speaker, text, path);
  return monoSamples(readWave(readFileSync(path)));
}

function synthesise({ program, args }: Speaker, text: string, path: string): void {
  // Renamed when whole: a half-written file would be taken for a sentence by the next run.
  const part = `${path}.${process.pid}.part.wav`;
  const command = program === 'flite' ? [...args, '-t', text, '-o', part] : [...args, '-w', part, text];
  const done = spawnSync(program, command);
  if (done.status !== 0) throw new Error(`${program} could not say "${text}": ${done.stderr ?? done.error}`);
  renameSync(part, path);
}

import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import type { Voicing } from './mouth.ts';
import { voiceNamed } from './voices.ts';
import { finishWav, type Wav } from './wav.ts';

/** A line takes milliseconds; one that takes this long hangs. */
const HANGS_AFTER_MS = 3000;

/**
 * One run of espeak-ng: it has loaded its voice and waits for one line on its input, so that the line is rendered at
 * once. It ends with that line, since its output does not tell where one line's sound ends and the next begins.
 */
export class EspeakProcess {
  readonly #child: ChildProcessWithoutNullStreams;
  readonly #chunks: Uint8Array[] = [];
  /** Resolves when it has ended, with its sound where it gave one. */
  readonly ended: Promise<Wav | null>;
  /** Whether the program could not be started at all. */
  missing = false;

  constructor(program: string, { voice, rate }: Voicing) {
    // -z leaves out the pause at the end: the ear is deaf while the kiosk speaks.
    const args = ['--stdout', '-z', '-b', '1', '-v', voiceNamed(voice), '-s', String(rate)];
    this.#child = spawn(program, args, { stdio: ['pipe', 'pipe', 'pipe'] });
    this.#child.stdout.on('data', (chunk: Uint8Array) => this.#chunks.push(chunk));
    // It may be gone before the line is written: what that comes to is told by its end.
    this.#child.stdin.on('error', () => {});
    this.#child.stderr.resume();
    this.ended = new Promise((resolve) => {
      this.#child.on('error', (error: NodeJS.ErrnoException) => {
        this.missing = error.code === 'ENOENT' || error.code === 'EACCES';
        resolve(null);
      });
      this.#child.on('close', (code) => resolve(code === 0 ? finishWav(Buffer.concat(this.#chunks)) : null));
    });
  }

  /** Renders one line; `null` where the process died over it or hung. */
  async render(text: string): Promise<Wav | null> {
    const hangs = setTimeout(() => this.kill(), HANGS_AFTER_MS);
    this.#child.stdin.end(`${text.replace(/\s+/g, ' ')}\n`);
    const wav = await this.ended;
    clearTimeout(hangs);
    return wav;
  }

  kill(): void {
    this.#child.kill('SIGKILL');
  }
}

import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { rm } from 'node:fs/promises';

/** Two pseudo-terminals joined back to back under lasting names. */
export interface PtyPair {
  readonly near: string;
  readonly far: string;
  /** Makes the two terminals; resolves when both names exist. Does nothing while plugged. */
  plug(): Promise<void>;
  /** Destroys them: whoever holds an end sees a disconnect, and the names are gone. */
  pull(): Promise<void>;
}

/** A pair, plugged; or the reason why this machine has none. */
export type PtyPairResult =
  | { readonly ok: true; readonly pair: PtyPair }
  | { readonly ok: false; readonly why: 'no-socat' };

const APPEARS_WITHIN_MS = 5000;
const LOOK_EVERY_MS = 5;

/** Makes a pair under these two names, in a folder that exists. Rejects when `socat` runs but makes no terminals. */
export async function createPtyPair(near: string, far: string): Promise<PtyPairResult> {
  let running: ChildProcess | null = null;

  async function plug(): Promise<boolean> {
    if (running !== null) return true;
    // A name left by a killed run would point at a terminal that is someone else's by now.
    await removeNames();
    const child = spawn('socat', [`pty,raw,echo=0,link=${near}`, `pty,raw,echo=0,link=${far}`], {
      stdio: 'ignore',
    });
    const started = await new Promise<boolean>((resolve, reject) => {
      child.once('spawn', () => resolve(true));
      child.once('error', (error: NodeJS.ErrnoException) =>
        error.code === 'ENOENT' ? resolve(false) : reject(error),
      );
    });
    if (!started) return false;
    running = child;
    // A program that dies must not leave terminals behind it.
    const kill = () => child.kill('SIGKILL');
    process.once('exit', kill);
    child.once('exit', () => {
      process.off('exit', kill);
      if (running === child) running = null;
    });
    await appear(child);
    return true;
  }

  async function appear(child: ChildProcess): Promise<void> {
    const until = performance.now() + APPEARS_WITHIN_MS;
    while (!existsSync(near) || !existsSync(far)) {
      if (child.exitCode !== null || performance.now() > until) {
        await pull();
        throw new Error(`socat made no terminals at ${near} and ${far}`);
      }
      await new Promise((resolve) => setTimeout(resolve, LOOK_EVERY_MS));
    }
  }

  async function pull(): Promise<void> {
    const child = running;
    running = null;
    if (child !== null && child.exitCode === null && child.signalCode === null) {
      const gone = new Promise((resolve) => child.once('exit', resolve));
      child.kill('SIGKILL');
      await gone;
    }
    await removeNames();
  }

  async function removeNames(): Promise<void> {
    await rm(near, { force: true });
    await rm(far, { force: true });
  }

  if (!(await plug())) return { ok: false, why: 'no-socat' };
  return {
    ok: true,
    pair: {
      near,
      far,
      async plug() {
        await plug();
      },
      pull,
    },
  };
}

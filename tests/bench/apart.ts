import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

const SCRIPT = fileURLToPath(new URL('./apart.mjs', import.meta.url));

/** Work in a process of its own. */
export interface Apart<T> {
  /** What it came to. Rejects where the process ends without telling. */
  readonly done: Promise<T>;
  /** Ends the process at once, as a pulled plug would. */
  kill(): Promise<void>;
}

/**
 * Runs an exported function of a file in a process of its own: a heap that other work has filled would hide what this one
 * adds to it. `said` hears each line that the work prints before it is done.
 */
export function runApart<T>(
  file: string,
  name: string,
  args: readonly unknown[],
  said: (line: string) => void = () => {},
): Apart<T> {
  const child = spawn(process.execPath, ['--expose-gc', SCRIPT, file, name, JSON.stringify(args)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const gone = new Promise<number | null>((resolve) => child.once('close', resolve));
  let last = '';
  createInterface({ input: child.stdout }).on('line', (line) => {
    last = line;
    said(line);
  });
  const done = gone.then((status) => {
    if (status !== 0) throw new Error(`${name} ended with ${status}`);
    return JSON.parse(last) as T;
  });
  // Whoever kills it does not wait for what it came to.
  done.catch(() => {});
  return {
    done,
    async kill() {
      child.kill('SIGKILL');
      await gone;
    },
  };
}

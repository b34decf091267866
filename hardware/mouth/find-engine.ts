import { spawn } from 'node:child_process';

/** Whether a program is there and runs: it is asked for its version. */
export function programRuns(program: string): Promise<boolean> {
  return new Promise((resolve) => {
    const child = spawn(program, ['--version'], { stdio: 'ignore' });
    child.on('error', () => resolve(false));
    child.on('close', (code) => resolve(code === 0));
  });
}

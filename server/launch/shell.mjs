import { spawnSync } from 'node:child_process';
import { ROOT } from './stamp.mjs';

/** Runs a command in the project's folder, showing what it prints. Throws when it fails. */
export function run(command, args, env = {}) {
  const result = spawnSync(command, args, { cwd: ROOT, stdio: 'inherit', env: { ...process.env, ...env } });
  if (result.error) throw result.error;
  if (result.status !== 0)
    throw new Error(`${command} ${args.join(' ')} failed (exit code ${result.status})`);
}

/** Whether a command can be found. */
export function has(command) {
  return spawnSync('sh', ['-c', `command -v ${command}`], { stdio: 'ignore' }).status === 0;
}

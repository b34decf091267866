import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { cpSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const HUB = 'dist/server/hub/main.js';

/** The built hub running as a process of its own. */
export interface HubProcess {
  readonly address: string;
  readonly child: ChildProcess;
}

/** Starts the built hub and waits for its address. */
export function startHub(env: Record<string, string>): Promise<HubProcess> {
  const child = spawn(process.execPath, [HUB], { cwd: ROOT, env: { ...process.env, ...env } });
  return new Promise((resolve, reject) => {
    let printed = '';
    const onText = (text: Buffer) => {
      printed += String(text);
      const address = /ready at (http\S+)/.exec(printed)?.[1];
      if (address !== undefined) resolve({ address, child });
    };
    child.stdout?.on('data', onText);
    child.stderr?.on('data', onText);
    child.on('exit', () => reject(new Error(`the hub stopped: ${printed}`)));
  });
}

/** Lets a kiosk in by the hub's own command, and puts the invitation into the kiosk's data folder. */
export function inviteInto(folder: string, name: string, env: Record<string, string>): string {
  const file = join(folder, 'byreside-hub.json');
  const done = runHub(['invite', 'hill-farm', name, file], env);
  if (done.status !== 0) throw new Error(done.text);
  cpSync(file, join(folder, 'hub.json'));
  return readFileSync(file, 'utf8');
}

/** Runs a command of the hub. */
export function runHub(args: string[], env: Record<string, string>): { status: number | null; text: string } {
  const done = spawnSync(process.execPath, [HUB, ...args], {
    cwd: ROOT,
    env: { ...process.env, ...env },
    encoding: 'utf8',
  });
  return { status: done.status, text: `${done.stdout}${done.stderr}` };
}

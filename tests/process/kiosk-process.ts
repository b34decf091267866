import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { TreatmentView } from '../../shared/dose.ts';
import type { KioskState } from '../../shared/state.ts';
import type { TrayAction } from '../../shared/tray.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** Whether a command is on this machine. */
export function has(command: string): boolean {
  return spawnSync('sh', ['-c', `command -v ${command}`], { stdio: 'ignore' }).status === 0;
}

/** The built server running as a process of its own. */
export interface KioskProcess {
  readonly base: string;
  readonly child: ChildProcess;
  /** All that it has printed, and its log. */
  readonly log: () => string;
  state(): Promise<KioskState>;
  treatments(): Promise<TreatmentView[]>;
  /** Posts an intent under an id of its own. */
  send(intent: Record<string, unknown>): Promise<{ ok: boolean; code?: string }>;
  /** Moves the simulated scales of a demo. */
  tray(action: TrayAction): Promise<void>;
  /** Waits until the state is so; fails after 20 s with the state as it is. */
  until(condition: (state: KioskState) => boolean, what: string): Promise<KioskState>;
}

/** Starts the built server on a free port by a command, Node unless another is said, and waits for its address. */
export async function startKiosk(
  env: Record<string, string>,
  args: readonly string[] = [],
  [program = process.execPath, ...before]: readonly string[] = [],
): Promise<KioskProcess> {
  const child = spawn(program, [...before, 'dist/server/main.js', ...args], {
    cwd: ROOT,
    env: { ...process.env, BYRESIDE_PORT: '0', ...env },
  });
  const log = logOf(child);
  const base = await addressOf(child, log);
  let ids = 0;
  const read = async (path: string) => (await fetch(`${base}${path}`)).json();
  const kiosk: KioskProcess = {
    base,
    child,
    log,
    state: () => read('/api/state') as Promise<KioskState>,
    treatments: () => read('/api/treatments') as Promise<TreatmentView[]>,
    async send(intent) {
      const response = await fetch(`${base}/api/intents`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ id: `outside-${++ids}`, ...intent }),
      });
      return response.json() as Promise<{ ok: boolean; code?: string }>;
    },
    async tray(action) {
      const answer = await kiosk.send({ type: 'tray', action });
      if (!answer.ok) throw new Error(`the bench tray refused ${action.do}: ${answer.code}`);
    },
    async until(condition, what) {
      const end = Date.now() + 45_000;
      for (;;) {
        const now = await kiosk.state();
        if (condition(now)) return now;
        if (Date.now() > end) throw new Error(`never came: ${what}; ${JSON.stringify(now)}`);
        await new Promise((resolve) => setTimeout(resolve, 30));
      }
    },
  };
  return kiosk;
}

function logOf({ stdout, stderr }: ChildProcess): () => string {
  let printed = '';
  for (const stream of [stdout, stderr])
    stream?.on('data', (text) => {
      printed += String(text);
    });
  return () => printed;
}

function addressOf(child: ChildProcess, log: () => string): Promise<string> {
  return new Promise((resolve, reject) => {
    child.stdout?.on('data', () => {
      const address = /ready at (http:\S+)/.exec(log())?.[1];
      if (address !== undefined) resolve(address);
    });
    child.on('exit', () => reject(new Error(`the server stopped: ${log()}`)));
  });
}

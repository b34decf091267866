import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { systemTimers } from '../serial/timers.ts';
import { createSimulatedBarn } from './barn.ts';
import { type LivelyBarn, startLivelyBarn } from './lively-barn.ts';

/** Any number: it only has to be the same every time. */
const SEED = 20260502;

const folder = await mkdtemp(join(tmpdir(), 'byreside-sim-'));
const timers = systemTimers();
const barn = await createSimulatedBarn({ timers, seed: SEED, folder });

async function leave(lively: LivelyBarn | null, status: number): Promise<never> {
  lively?.stop();
  await barn.stop();
  await rm(folder, { recursive: true, force: true });
  process.exit(status);
}

if (barn.medium === 'memory') {
  console.error('No pseudo-terminals here: install socat, then start again.');
  await leave(null, 1);
}

for (const role of ['platform', 'bench', 'wand'] as const) {
  console.log(`BYRESIDE_${role.toUpperCase()}=${barn.paths[role]},${barn.profiles[role]},9600`);
}
console.log('Put these three before "npm start". Animals come and go until Ctrl-C.');
const lively = startLivelyBarn(barn, timers, SEED, (line) => console.log(line));
for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.once(signal, () => void leave(lively, 0));
}

import { systemTimers } from '../hardware/serial/timers.ts';
import { readEnvironment } from './config/environment.ts';
import { endBy } from './ending.ts';
import { log } from './log.ts';
import { tellServiceManager } from './machine/watchdog.ts';
import type { NextStart, PracticeLook } from './practice/practice.ts';
import { type Served, serve } from './serve.ts';

const HOW = {
  demo: ' (demo: invented farm, simulated scales)',
  real: '',
  problem: ' (not configured: see the screen)',
} as const;

function whyOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** Starts, prints the address, and starts anew when the screen asks for it. Ends the process otherwise. */
async function run(demoAsked: boolean, practice: PracticeLook | null = null): Promise<void> {
  const environment = readEnvironment(process.env, process.cwd());
  let restart = (_: NextStart) => {};
  const restarting = new Promise<NextStart>((resolve) => {
    restart = resolve;
  });
  const served: Served = await serve(environment, { demoAsked, practice }, (next) => restart(next));
  const manager = tellServiceManager({
    env: process.env,
    timers: systemTimers(),
    work: served.work,
    log,
  });
  const end = (signal: NodeJS.Signals) => {
    manager.stopping();
    endBy(signal, () => served.stop());
  };
  // Before the address is told: whoever reads it may ask for the end at once.
  process.once('SIGINT', end);
  process.once('SIGTERM', end);
  console.log(
    `Byreside is ready at ${served.address}${practice === null ? HOW[served.kind] : ' (practice round)'}`,
  );
  manager.ready();
  const next = await restarting;
  process.off('SIGINT', end);
  process.off('SIGTERM', end);
  manager.rest();
  await served.stop();
  if (next.kind === 'practice') await run(demoAsked, next.look);
  else await run(next.kind === 'before' && demoAsked);
}

try {
  await run(process.argv.includes('--demo'));
} catch (error) {
  console.error(`Byreside did not start: ${whyOf(error)}.`);
  console.error('If another program uses the port: stop it, or choose a port with BYRESIDE_PORT.');
  process.exit(1);
}

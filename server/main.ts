import { statSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openSerialPort } from '../hardware/serial/serialport-connection.ts';
import { systemTimers } from '../hardware/serial/timers.ts';
import { buildApp } from './app.ts';
import { systemClock } from './barn/clock.ts';
import { type Environment, readEnvironment } from './config/environment.ts';
import { loadSetup } from './config/load.ts';
import { openHouse } from './house.ts';

function environmentOrExit(): Environment {
  try {
    return readEnvironment(process.env, process.cwd());
  } catch (error) {
    console.error(`Byreside did not start: ${error instanceof Error ? error.message : error}.`);
    process.exit(1);
  }
}

const environment = environmentOrExit();
const setup = loadSetup(environment, process.argv.includes('--demo'));
const simulatorFolder = await mkdtemp(join(tmpdir(), 'byreside-'));
const house = await openHouse({
  setup,
  dataFolder: environment.dataFolder,
  simulatorFolder,
  openPort: openSerialPort,
  timers: systemTimers(),
  // The clock is not believed before the day this file was built.
  clock: systemClock(statSync(fileURLToPath(import.meta.url)).mtimeMs),
  random: Math.random,
  log: (message, error) => console.error(`${new Date().toISOString()} ${message}:`, error),
});
const app = await buildApp(house, environment.host, fileURLToPath(new URL('../kiosk', import.meta.url)));

let stopping = false;
async function stop(): Promise<void> {
  if (stopping) return;
  stopping = true;
  await app.close();
  await house.stop();
  await rm(simulatorFolder, { recursive: true, force: true });
  process.exit(0);
}
process.on('SIGINT', () => void stop());
process.on('SIGTERM', () => void stop());

try {
  const address = await app.listen({ port: environment.port, host: environment.host });
  const mode = {
    demo: ' (demo: invented farm, simulated scales)',
    real: '',
    problem: ' (not configured: see the screen)',
  };
  console.log(`Byreside is ready at ${address}${mode[setup.kind]}`);
} catch (error) {
  const why = error instanceof Error ? error.message : String(error);
  console.error(`Byreside cannot listen on ${environment.host}:${environment.port}: ${why}.`);
  console.error('Another program may be using the port: stop it, or choose one with BYRESIDE_PORT.');
  await house.stop();
  await rm(simulatorFolder, { recursive: true, force: true });
  process.exit(1);
}

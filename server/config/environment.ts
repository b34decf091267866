import { isAbsolute, resolve } from 'node:path';

/** What the environment says, before any file is read. */
export interface Environment {
  readonly port: number;
  readonly host: string;
  /** The port for other devices of the farm; `null` leaves it to the file. */
  readonly networkPort: number | null;
  readonly dataFolder: string;
  /** The ALSA name of the board's own microphone; `null` leaves it to the file. */
  readonly microphone: string | null;
  /** Device overrides as written: `path[,profile[,baud]]`; empty ones are left out. */
  readonly devices: Readonly<Partial<Record<'platform' | 'bench' | 'wand', string>>>;
}

/** Reads the `BYRESIDE_…` variables. Throws an `Error` that names the variable when a value makes no sense. */
export function readEnvironment(env: NodeJS.ProcessEnv, workingFolder: string): Environment {
  const folder = env['BYRESIDE_DATA'] || './data';
  const devices: Record<string, string> = {};
  for (const role of ['platform', 'bench', 'wand']) {
    const value = env[`BYRESIDE_${role.toUpperCase()}`];
    if (value) devices[role] = value;
  }
  return {
    port: portFrom(env, 'BYRESIDE_PORT') ?? 4180,
    networkPort: portFrom(env, 'BYRESIDE_NETWORK_PORT'),
    host: env['BYRESIDE_HOST'] || '127.0.0.1',
    dataFolder: isAbsolute(folder) ? folder : resolve(workingFolder, folder),
    microphone: env['BYRESIDE_MICROPHONE'] || null,
    devices,
  };
}

function portFrom(env: NodeJS.ProcessEnv, name: string): number | null {
  if (!env[name]) return null;
  const port = Number(env[name]);
  if (!Number.isInteger(port) || port < 0 || port > 65_535) {
    throw new Error(`${name} is "${env[name]}": give a port number from 0 to 65535`);
  }
  return port;
}

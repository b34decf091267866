import { readdir, realpath } from 'node:fs/promises';
import { join } from 'node:path';

/** A port a scale or wand may be plugged into. */
export interface CandidatePort {
  /** The name to configure: by id where there is one, else by socket, else the device itself. */
  readonly path: string;
  /** What the name stands for at this moment, such as `/dev/ttyUSB0`. */
  readonly device: string;
  readonly byId: string | null;
  /** The name by socket. Of two adapters without serial numbers of their own only this tells one from the other. */
  readonly byPath: string | null;
}

/** Where to look; the defaults are those of Linux. */
export interface PortPlaces {
  readonly byId?: string;
  readonly byPath?: string;
  /** Finds further devices by the serial library; left out, none are. */
  readonly list?: () => Promise<readonly string[]>;
}

/**
 * Lists ports by their lasting names, each device once, by path.
 *
 * Never rejects: a folder or a library that is not there holds nothing. A name whose device is gone is left out.
 */
export async function listPorts(places: PortPlaces = {}): Promise<CandidatePort[]> {
  const [byId, byPath, listed] = await Promise.all([
    namesIn(places.byId ?? '/dev/serial/by-id'),
    namesIn(places.byPath ?? '/dev/serial/by-path'),
    Promise.resolve()
      .then(() => places.list?.() ?? [])
      .catch(() => []),
  ]);
  const devices = new Set([...byId.keys(), ...byPath.keys(), ...listed]);
  return [...devices]
    .map((device) => {
      const [id, socket] = [byId.get(device) ?? null, byPath.get(device) ?? null];
      return { path: id ?? socket ?? device, device, byId: id, byPath: socket };
    })
    .sort((a, b) => a.path.localeCompare(b.path));
}

/** The first name in the folder of each device. */
async function namesIn(folder: string): Promise<Map<string, string>> {
  const names = await readdir(folder).catch(() => []);
  const found = new Map<string, string>();
  for (const name of names.sort()) {
    const path = join(folder, name);
    const device = await realpath(path).catch(() => null);
    if (device !== null && !found.has(device)) found.set(device, path);
  }
  return found;
}

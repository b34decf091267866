import type { Access, AccessFile } from '../../../server/network/access-file.ts';
import { Network, type NetworkOptions } from '../../../server/network/network.ts';

/** Who is let in, kept in memory; `writes` are all that was kept. */
export function memoryAccess(access: Partial<Access> = {}): AccessFile & { readonly writes: Access[] } {
  let kept: Access = { on: false, nextNumber: 1, devices: [], pins: {}, ...access };
  const writes: Access[] = [];
  return {
    writes,
    read: () => kept,
    write(next) {
      kept = next;
      writes.push(next);
    },
  };
}

let ids = 0;

/** A network that nobody has turned on, with parts of it put in place. */
export function closedNetwork(parts: Partial<NetworkOptions> = {}): Network {
  return new Network({
    folder: '/nowhere',
    file: memoryAccess(),
    config: { on: false, port: 0, proxy: null },
    people: () => ['Wren', 'Finch'],
    clock: { now: () => ({ uptimeMs: performance.now(), wallMs: Date.now() }) },
    newId: () => `device-${++ids}`,
    changed: () => {},
    log: () => {},
    ...parts,
  });
}

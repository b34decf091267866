import { mkdir, mkdtemp, realpath, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { listPorts } from '../../../hardware/serial/ports.ts';
import { listSerialPorts } from '../../../hardware/serial/serialport-list.ts';

describe('the list of ports', () => {
  let root: string;
  beforeEach(async () => {
    root = await realpath(await mkdtemp(join(tmpdir(), 'byreside-ports-')));
    for (const folder of ['by-id', 'by-path']) await mkdir(join(root, folder));
    for (const device of ['ttyUSB0', 'ttyUSB1', 'ttyACM0']) await writeFile(join(root, device), '');
  });
  afterEach(() => rm(root, { recursive: true, force: true }));

  const at = (...names: string[]) => join(root, ...names);
  const list = (more: Parameters<typeof listPorts>[0] = {}) =>
    listPorts({ byId: at('by-id'), byPath: at('by-path'), ...more });

  it('names each device once, by id where there is one, else by its socket', async () => {
    await symlink('../ttyUSB0', at('by-id', 'usb-adapter-A'));
    await symlink('../ttyUSB0', at('by-path', 'socket-1'));
    await symlink('../ttyUSB1', at('by-path', 'socket-2'));
    expect(await list()).toEqual([
      {
        path: at('by-id', 'usb-adapter-A'),
        device: at('ttyUSB0'),
        byId: at('by-id', 'usb-adapter-A'),
        byPath: at('by-path', 'socket-1'),
      },
      {
        path: at('by-path', 'socket-2'),
        device: at('ttyUSB1'),
        byId: null,
        byPath: at('by-path', 'socket-2'),
      },
    ]);
  });

  it('keeps two equal adapters apart, of which by-id names only one', async () => {
    await symlink('../ttyUSB1', at('by-id', 'usb-same-0001'));
    await symlink('../ttyUSB0', at('by-path', 'socket-1'));
    await symlink('../ttyUSB1', at('by-path', 'socket-2'));
    const ports = await list();
    expect(ports.map((port) => port.device).sort()).toEqual([at('ttyUSB0'), at('ttyUSB1')]);
    expect(new Set(ports.map((port) => port.byPath)).size).toBe(2);
  });

  it('leaves out names whose device is gone', async () => {
    await symlink('../ttyUSB9', at('by-id', 'usb-gone'));
    expect(await list()).toEqual([]);
  });

  it('is empty where neither folder exists, without a word', async () => {
    expect(await listPorts({ byId: at('none'), byPath: at('none') })).toEqual([]);
  });

  it('adds what the serial library finds besides, and does without where it fails', async () => {
    await symlink('../ttyUSB0', at('by-id', 'usb-adapter-A'));
    const found = await list({ list: async () => [at('ttyUSB0'), at('ttyACM0')] });
    expect(found.map((port) => port.path)).toEqual([at('by-id', 'usb-adapter-A'), at('ttyACM0')]);
    const failed = await list({ list: () => Promise.reject(new Error('spawn udevadm ENOENT')) });
    expect(failed).toHaveLength(1);
    const thrown = await list({
      list: () => {
        throw new Error('at once');
      },
    });
    expect(thrown).toHaveLength(1);
  });

  it('never rejects on this very machine', async () => {
    expect(Array.isArray(await listPorts({ list: listSerialPorts }))).toBe(true);
  });
});

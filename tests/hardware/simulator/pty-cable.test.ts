import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Connection } from '../../../hardware/serial/connection.ts';
import { createPtyCable } from '../../../hardware/simulator/pty-cable.ts';
import { socatPresent } from '../socat-present.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'byreside-cable-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const suite = socatPresent
  ? 'a cable of pseudo-terminals'
  : 'a cable of pseudo-terminals (left out: socat is not installed)';
describe.skipIf(!socatPresent)(suite, () => {
  async function make() {
    const ends: Connection[] = [];
    const cable = await createPtyCable(folder, 'port', (end) => ends.push(end));
    if (cable === null) throw new Error('socat is not installed');
    return { cable, ends };
  }

  it('pulled while it is still being plugged is pulled in the end, and can be plugged again', async () => {
    const { cable, ends } = await make();
    await cable.pull();
    await Promise.all([cable.plug(), cable.pull()]);
    expect(existsSync(cable.path)).toBe(false);
    await Promise.all([cable.plug(), cable.plug()]);
    expect(existsSync(cable.path)).toBe(true);
    // One end for each time it was plugged, however often that was asked.
    expect(ends).toHaveLength(3);
    await cable.stop();
  });

  it('that could not be plugged stays pulled, and is plugged once it can be', async () => {
    const { cable, ends } = await make();
    await cable.pull();
    await rm(folder, { recursive: true });
    await expect(cable.plug()).rejects.toThrow(/no terminals/);
    await mkdir(folder);
    await cable.plug();
    expect(existsSync(cable.path)).toBe(true);
    expect(ends).toHaveLength(2);
    await cable.stop();
  });
});

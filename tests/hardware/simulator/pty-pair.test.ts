import { existsSync, readlinkSync } from 'node:fs';
import { mkdtemp, rm, symlink } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createPtyPair } from '../../../hardware/simulator/pty-pair.ts';
import { socatPresent } from '../socat-present.ts';

let folder: string;
let path: string | undefined;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'byreside-pty-'));
  path = process.env['PATH'];
});
afterEach(async () => {
  process.env['PATH'] = path;
  await rm(folder, { recursive: true, force: true });
});

describe('a machine without socat', () => {
  it('has no pseudo-terminal pair, and says so without an error', async () => {
    process.env['PATH'] = folder;
    expect(await createPtyPair(join(folder, 'a'), join(folder, 'b'))).toEqual({ ok: false, why: 'no-socat' });
  });
});

const suite = socatPresent
  ? 'a pseudo-terminal pair'
  : 'a pseudo-terminal pair (left out: socat is not installed)';
describe.skipIf(!socatPresent)(suite, () => {
  async function make() {
    const made = await createPtyPair(join(folder, 'a'), join(folder, 'b'));
    if (!made.ok) throw new Error(made.why);
    return made.pair;
  }

  it('has both names when it is made, none when pulled, and the same ones when plugged again', async () => {
    const pair = await make();
    const names = () => [existsSync(pair.near), existsSync(pair.far)];
    expect(names()).toEqual([true, true]);
    await pair.pull();
    expect(names()).toEqual([false, false]);
    await pair.plug();
    expect(names()).toEqual([true, true]);
    await pair.pull();
    await pair.pull();
    expect(names()).toEqual([false, false]);
  });

  it('keeps its terminals when it is plugged while plugged', async () => {
    const pair = await make();
    const before = readlinkSync(pair.near);
    await pair.plug();
    expect(readlinkSync(pair.near)).toBe(before);
    await pair.pull();
  });

  it('takes over names that a killed run left behind', async () => {
    await symlink('/dev/null', join(folder, 'a'));
    await symlink('/dev/null', join(folder, 'b'));
    const pair = await make();
    expect([readlinkSync(pair.near), readlinkSync(pair.far)].every((to) => to.includes('pts'))).toBe(true);
    await pair.pull();
  });

  it('rejects where the names cannot be made', async () => {
    await expect(createPtyPair('/no/such/folder/a', join(folder, 'b'))).rejects.toThrow(/no terminals/);
  });
});

import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { systemTimers } from '../../../hardware/serial/timers.ts';
import { type Farm, joinFarm } from '../../../server/sync/farm.ts';
import type { NamedLine } from '../../../server/sync/line.ts';
import { pauseAfter } from '../../../server/sync/worker.ts';
import { testBarn } from '../make/test-barn.ts';

const INVITATION = {
  hub: 'https://hub.farm:4185',
  farm: 'hill-farm',
  name: 'North shed',
  credential: 'c-1',
  key: 'k'.repeat(43),
  ca: null,
};

const folders: string[] = [];
const farms: Farm[] = [];
afterEach(async () => {
  for (const farm of farms.splice(0)) await farm.stop();
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

function folder(): string {
  const made = mkdtempSync(join(tmpdir(), 'farm-'));
  folders.push(made);
  return made;
}

const CUT: NamedLine = {
  push: async () => Promise.reject(new Error('the line is cut')),
  pull: async () => Promise.reject(new Error('the line is cut')),
  idAt: async () => null,
  offices: async () => Promise.reject(new Error('the line is cut')),
  close: () => {},
};

function farmOf(dataFolder: string, sticks: readonly string[] = [], line: NamedLine = CUT) {
  const { barn } = testBarn();
  const restarts: number[] = [];
  const farm = joinFarm({
    dataFolder,
    barn,
    openHub: () => line,
    sticks: () => sticks,
    timers: systemTimers(),
    random: () => 0.5,
    changed: () => {},
    log: () => {},
    restart: () => restarts.push(1),
  });
  farms.push(farm);
  return { farm, restarts };
}

test('an invitation on a stick is shown without its key, taken by one press, and the kiosk starts anew', () => {
  const [data, stick] = [folder(), folder()];
  writeFileSync(join(stick, 'byreside-hub.json'), JSON.stringify(INVITATION));
  const { farm, restarts } = farmOf(data, [stick]);
  expect(farm.view()).toEqual({ kind: 'none', invitation: { name: 'North shed', hub: INVITATION.hub } });
  expect(farm.join()).toBeNull();
  expect(restarts).toHaveLength(1);
  expect(JSON.parse(readFileSync(join(data, 'hub.json'), 'utf8'))).toEqual(INVITATION);
});

test('without an invitation, or with one that cannot be read, nothing is joined', () => {
  const [data, stick] = [folder(), folder()];
  expect(farmOf(data).farm.join()).toBe('no-invitation');
  writeFileSync(join(stick, 'byreside-hub.json'), '{"hub": "ftp://hub"}');
  const { farm } = farmOf(data, [stick]);
  expect(farm.view()).toMatchObject({ kind: 'none', invitation: { why: expect.any(String) } });
  expect(farm.join()).toBe('no-invitation');
  expect(existsSync(join(data, 'hub.json'))).toBe(false);
});

test('a kiosk that shares tells that the hub is not reached, and shares no more when it is told so', async () => {
  const data = folder();
  writeFileSync(join(data, 'hub.json'), JSON.stringify(INVITATION));
  const { farm, restarts } = farmOf(data);
  await expect
    .poll(() => farm.view())
    .toMatchObject({ kind: 'hub', name: 'North shed', lastAt: null, trouble: 'unreachable', toPush: null });
  expect(farm.leave()).toBeNull();
  expect(restarts).toHaveLength(1);
  expect(existsSync(join(data, 'hub.json'))).toBe(false);
});

test('a file in the data folder that cannot be read is told, and can be forgotten', () => {
  const data = folder();
  writeFileSync(join(data, 'hub.json'), '{');
  const { farm } = farmOf(data);
  expect(farm.view()).toMatchObject({ kind: 'unreadable' });
  expect(farm.leave()).toBeNull();
  expect(existsSync(join(data, 'hub.json'))).toBe(false);
});

test('what the hub lacks is pushed as soon as it answers', async () => {
  const data = folder();
  writeFileSync(join(data, 'hub.json'), JSON.stringify(INVITATION));
  const heads = new Map<string, number>();
  const { farm } = farmOf(data, [], {
    ...CUT,
    pull: async () => {
      await new Promise((resolve) => setTimeout(resolve, 50));
      return { events: [], heads: new Map(heads), parted: [] };
    },
    push: async ({ life, events }) => {
      heads.set(life, events.at(-1)?.sequence ?? 0);
      return { ok: true, head: heads.get(life) ?? 0 };
    },
  });
  await expect.poll(() => farm.view()).toMatchObject({ kind: 'hub', trouble: null, toPush: 0 });
});

test('the pause after a failure grows, is never in step, and is short enough to find a hub that is back', () => {
  const pauses = [1, 2, 3, 4, 50].map((failures) => [
    pauseAfter(failures, () => 0),
    pauseAfter(failures, () => 1),
  ]);
  expect(pauses).toEqual([
    [100, 200],
    [200, 400],
    [400, 800],
    [600, 1200],
    [600, 1200],
  ]);
});

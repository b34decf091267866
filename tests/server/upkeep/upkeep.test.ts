import { describe, expect, test } from 'vitest';
import { DAY_MS } from '../../../core/moment.ts';
import { NO_DISK } from '../../../server/barn/disk.ts';
import { createStore } from '../../../server/store/store.ts';
import { startUpkeep } from '../../../server/upkeep/upkeep.ts';
import { ManualTimers } from '../../hardware/manual-timers.ts';
import { HandClock } from '../make/test-barn.ts';

function rig() {
  const timers = new ManualTimers();
  const clock = new HandClock();
  const store = createStore(':memory:');
  const done: string[] = [];
  const at = { idle: true, said: [] as string[], fails: false, trouble: null as 'damaged' | null };
  const damage: string[][] = [];
  const upkeep = startUpkeep({
    file: '/data/byreside.sqlite',
    jobs: {
      async check(_, how) {
        done.push(how);
        if (at.fails) throw new Error('out of memory');
        return at.said;
      },
      copy: async () => {},
    },
    backups: {
      view: () => ({ places: [], running: false, last: null, overdue: true, trouble: null }),
      whereDue: async () => void done.push('backup'),
      now: () => true,
    },
    store,
    disk: { ...NO_DISK, trouble: () => at.trouble },
    clock,
    timers,
    idle: () => at.idle,
    damaged: (said) => {
      damage.push([...said]);
      at.trouble = 'damaged';
    },
    log: (message) => done.push(message),
  });
  async function minutes(count: number) {
    for (let i = 0; i < count; i += 1) {
      clock.pass(60_000);
      await timers.advance(60_000);
      await new Promise((resolve) => setImmediate(resolve));
    }
  }
  return { upkeep, done, at, damage, minutes, clock };
}

describe('upkeep', () => {
  test('checks quickly after a start, wholly once a week, and looks for copies to make', async () => {
    const { done, minutes, clock, upkeep } = rig();
    await minutes(1);
    expect(done).toEqual(['quick', 'whole', 'backup']);
    expect(upkeep.view().checkedAt).toBe(new Date(clock.wallMs).toISOString());
    await minutes(3);
    expect(done.filter((what) => what === 'whole')).toHaveLength(1);
    clock.pass(7 * DAY_MS);
    await minutes(2);
    expect(done.filter((what) => what === 'whole')).toHaveLength(2);
  });

  test('stays out of the way while somebody works', async () => {
    const { done, minutes, at } = rig();
    at.idle = false;
    await minutes(5);
    expect(done).toEqual(['quick']);
    at.idle = true;
    await minutes(1);
    expect(done).toEqual(['quick', 'whole', 'backup']);
  });

  test('tells of damage, and then neither checks nor copies any more', async () => {
    const { done, minutes, at, damage, upkeep } = rig();
    at.said = ['Tree 7 page 9: btreeInitPage() returns error code 11'];
    await minutes(4);
    expect(damage).toEqual([at.said]);
    expect(done).toEqual(['quick']);
    expect(upkeep.backUpNow()).toBe(false);
  });

  test('takes a check that could not be made for no damage', async () => {
    const { done, minutes, at, damage } = rig();
    at.fails = true;
    await minutes(1);
    expect(damage).toEqual([]);
    expect(done).toContain('the file of the records could not be checked');
    expect(done).toContain('backup');
  });

  test('ends', async () => {
    const { done, minutes, upkeep } = rig();
    upkeep.stop();
    await minutes(3);
    expect(done).toEqual([]);
  });
});

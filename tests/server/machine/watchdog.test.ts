import { expect, test } from 'vitest';
import { tellServiceManager } from '../../../server/machine/watchdog.ts';
import { ManualTimers } from '../../hardware/manual-timers.ts';

function told(env: NodeJS.ProcessEnv, work: () => Promise<void> = async () => {}) {
  const timers = new ManualTimers();
  const said: string[] = [];
  const failed: string[] = [];
  const manager = tellServiceManager({
    env,
    timers,
    work,
    notify: (state) => said.push(state),
    log: (message) => failed.push(message),
  });
  return { manager, said, failed, pass: (ms: number) => timers.advance(ms) };
}

const ASKED = { NOTIFY_SOCKET: '/run/notify', WATCHDOG_USEC: '60000000' };

test('it is fed three times within its time while work is done', async () => {
  const { manager, said, pass } = told(ASKED);
  manager.ready();
  await pass(0);
  for (let fed = 0; fed < 3; fed += 1) await pass(20_000);
  expect(said).toEqual(['READY=1', 'WATCHDOG=1', 'WATCHDOG=1', 'WATCHDOG=1', 'WATCHDOG=1']);
});

test('work that never ends starves it', async () => {
  const { manager, said, pass } = told(ASKED, () => new Promise(() => {}));
  manager.ready();
  await pass(120_000);
  expect(said).toEqual(['READY=1']);
});

test('work that fails starves it, is logged, and is tried again', async () => {
  let fails = true;
  const { manager, said, failed, pass } = told(ASKED, async () => {
    if (fails) throw new Error('no database');
  });
  manager.ready();
  await pass(0);
  expect(said).toEqual(['READY=1']);
  expect(failed).toEqual(['the kiosk does not answer itself']);
  fails = false;
  await pass(20_000);
  expect(said).toEqual(['READY=1', 'WATCHDOG=1']);
});

test('the end is told once, and nothing after it', async () => {
  const { manager, said, pass } = told(ASKED);
  manager.ready();
  await pass(0);
  manager.stopping();
  await pass(60_000);
  expect(said).toEqual(['READY=1', 'WATCHDOG=1', 'STOPPING=1']);
});

test('while it starts anew by itself, systemd hears of no end', async () => {
  const { manager, said, pass } = told(ASKED);
  manager.ready();
  manager.rest();
  await pass(60_000);
  expect(said.filter((state) => state !== 'WATCHDOG=1')).toEqual(['READY=1']);
});

test('where nobody asked, nothing is told and no work is done', async () => {
  let worked = 0;
  const { manager, said, pass } = told({}, async () => {
    worked += 1;
  });
  manager.ready();
  await pass(60_000);
  manager.stopping();
  expect(said).toEqual([]);
  expect(worked).toBe(0);
});

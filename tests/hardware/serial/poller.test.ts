import { describe, expect, it } from 'vitest';
import { startPoller } from '../../../hardware/serial/poller.ts';
import { bytes } from '../bytes.ts';
import { ManualTimers } from '../manual-timers.ts';

function start() {
  const timers = new ManualTimers();
  const askedAt: number[] = [];
  const poll = { bytes: bytes('\nW\r'), everyMs: 100, replyWithinMs: 400 };
  const poller = startPoller(poll, () => askedAt.push(timers.now()), timers);
  return { timers, askedAt, poller };
}

describe('the poller', () => {
  it('asks at once, and again when the reply is in and the time between questions is over', async () => {
    const { timers, askedAt, poller } = start();
    await timers.advance(30);
    poller.replied();
    await timers.advance(69);
    expect(askedAt).toEqual([0]);
    await timers.advance(1);
    expect(askedAt).toEqual([0, 100]);
  });

  it('asks at once after a reply that took longer than the time between questions', async () => {
    const { timers, askedAt, poller } = start();
    await timers.advance(250);
    poller.replied();
    await timers.advance(0);
    expect(askedAt).toEqual([0, 250]);
  });

  it('gives up a question after the time for a reply and asks anew', async () => {
    const { timers, askedAt } = start();
    await timers.advance(1200);
    expect(askedAt).toEqual([0, 400, 800, 1200]);
  });

  it('ignores frames that nobody asked for', async () => {
    const { timers, askedAt, poller } = start();
    poller.replied();
    for (let frame = 0; frame < 5; frame += 1) {
      await timers.advance(15);
      poller.replied();
    }
    await timers.advance(25);
    expect(askedAt).toEqual([0, 100]);
  });

  it('never asks again once stopped, and leaves no timer', async () => {
    const { timers, askedAt, poller } = start();
    poller.stop();
    poller.replied();
    expect(timers.pending).toBe(0);
    await timers.advance(5000);
    expect(askedAt).toEqual([0]);
  });
});

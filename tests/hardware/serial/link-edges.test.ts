import { describe, expect, it } from 'vitest';
import type { Connection, OpenPort } from '../../../hardware/serial/connection.ts';
import { createLink } from '../../../hardware/serial/link.ts';
import type { LinkDriver, Received } from '../../../hardware/serial/link-driver.ts';
import { bytes } from '../bytes.ts';
import { ManualTimers } from '../manual-timers.ts';

/** A driver that hands over what each of its sessions was given to speak with. */
function openDriver() {
  const sessions: ((received: Received<string>) => void)[] = [];
  const driver: LinkDriver<string> = {
    readyWhen: 'first-item',
    silentAfterMs: 1000,
    poll: null,
    openSession(receive) {
      sessions.push(receive);
      return (chunk) => receive({ kind: 'item', item: Buffer.from(chunk).toString('latin1') });
    },
  };
  return { driver, sessions };
}

/** Ports that open when the test says so, and count how often each was closed. */
function openPorts() {
  const opening: (() => void)[] = [];
  const ports: { data: (chunk: Uint8Array) => void; end: () => void; closes: number }[] = [];
  const openPort = () =>
    new Promise<Connection>((resolve) => {
      opening.push(() => {
        const port = { data: (_chunk: Uint8Array) => {}, end: () => {}, closes: 0 };
        ports.push(port);
        resolve({
          write: () => {},
          close: async () => {
            port.closes += 1;
          },
          onData: (listener) => {
            port.data = listener;
          },
          onClose: (listener) => {
            port.end = () => listener('gone');
          },
        });
      });
    });
  return { opening, ports, openPort };
}

function setUp(given: { openPort?: OpenPort; hear?: (status: string) => void } = {}) {
  const timers = new ManualTimers();
  const { driver, sessions } = openDriver();
  const stand = openPorts();
  const states: string[] = [];
  const items: string[] = [];
  const link = createLink({
    path: 'test',
    baud: 9600,
    driver,
    timers,
    openPort: given.openPort ?? stand.openPort,
    random: () => 0.5,
    onState: (state) => {
      states.push(state.status);
      given.hear?.(state.status);
    },
    onItem: (item) => items.push(item),
  });
  /** Opens the newest port and lets it settle. */
  async function settle() {
    await timers.advance(0);
    stand.opening.at(-1)?.();
    await timers.advance(250);
  }
  return { timers, sessions, ...stand, states, items, link, settle };
}

describe('a link on the edge', () => {
  it('stays ready for as long as frames come, without a word', async () => {
    const { timers, ports, states, items, link, settle } = setUp();
    await settle();
    for (let frame = 0; frame < 50; frame += 1) {
      ports[0]?.data(bytes('frame'));
      await timers.advance(100);
    }
    expect(states).toEqual(['settling', 'ready']);
    expect(items).toHaveLength(50);
    await link.stop();
  });

  it('closes a port that opens only after it was stopped', async () => {
    const { timers, opening, ports, states, link } = setUp();
    await timers.advance(0);
    const stopped = link.stop();
    opening[0]?.();
    await stopped;
    expect(ports.map((port) => port.closes)).toEqual([1]);
    expect(states).toEqual([]);
    expect(link.counters.opens).toBe(0);
  });

  it('is deaf to a session whose connection is lost', async () => {
    const { timers, ports, sessions, opening, items, states, link, settle } = setUp();
    await settle();
    ports[0]?.data(bytes('one'));
    ports[0]?.end();
    sessions[0]?.({ kind: 'item', item: 'late' });
    await timers.advance(100);
    opening[1]?.();
    await timers.advance(250);
    sessions[0]?.({ kind: 'item', item: 'very late' });
    expect(states).toEqual(['settling', 'ready', 'lost', 'settling']);
    expect(items).toEqual(['one']);
    expect(link.counters.frames).toBe(1);
    await link.stop();
  });

  it('takes the same end twice for one loss, and sets one retry', async () => {
    const { timers, ports, opening, states, link, settle } = setUp();
    await settle();
    ports[0]?.data(bytes('one'));
    ports[0]?.end();
    ports[0]?.end();
    expect(states).toEqual(['settling', 'ready', 'lost']);
    expect(timers.pending).toBe(1);
    await timers.advance(100);
    expect(opening).toHaveLength(2);
    expect(link.counters.losses).toBe(1);
    const stopped = link.stop();
    opening[1]?.();
    await stopped;
  });

  it('gives no item to one who stops it on hearing that it is ready', async () => {
    const { ports, items, link, settle } = setUp({
      hear: (status) => {
        if (status === 'ready') void link.stop();
      },
    });
    await settle();
    ports[0]?.data(bytes('one'));
    expect(link.state).toEqual({ status: 'ready' });
    expect(items).toEqual([]);
    expect(ports[0]?.closes).toBe(1);
  });

  it('opens no second port while the first try is still under way', async () => {
    const { timers, opening, link } = setUp();
    await timers.advance(60_000);
    expect(opening).toHaveLength(1);
    expect(link.state).toEqual({ status: 'opening' });
    const stopped = link.stop();
    opening[0]?.();
    await stopped;
  });

  it('waits longer from try to try, never over 2 s', async () => {
    const triedAt: number[] = [];
    const openPort: OpenPort = async () => {
      triedAt.push(timers.now());
      throw new Error('no luck');
    };
    const { timers, link } = setUp({ openPort });
    await timers.advance(8000);
    const waits = triedAt.slice(1).map((at, index) => at - (triedAt[index] ?? Number.NaN));
    expect(waits.slice(0, 6)).toEqual([100, 200, 400, 800, 1000, 1000]);
    expect(Math.max(...waits)).toBeLessThanOrEqual(2000);
    expect(link.state).toMatchObject({
      status: 'lost',
      reason: 'other',
      remedy: expect.stringMatching(/\.$/),
    });
    await link.stop();
    expect(timers.pending).toBe(0);
  });

  it('backs off from a port that opens and ends at once, over and over', async () => {
    const { timers, ports, opening, link } = setUp();
    const openedAt: number[] = [];
    for (let cycle = 0; cycle < 6; cycle += 1) {
      while (opening.length <= cycle) await timers.advance(10);
      openedAt.push(timers.now());
      opening[cycle]?.();
      await timers.advance(0);
      ports[cycle]?.end();
    }
    const waits = openedAt.slice(1).map((at, index) => at - (openedAt[index] ?? Number.NaN));
    expect(waits).toEqual([100, 200, 400, 800, 1000]);
    await link.stop();
  });
});

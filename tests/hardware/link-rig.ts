import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Connection, OpenPort } from '../../hardware/serial/connection.ts';
import { createLink, type Link } from '../../hardware/serial/link.ts';
import type { LinkDriver, Refused } from '../../hardware/serial/link-driver.ts';
import type { LinkState } from '../../hardware/serial/link-state.ts';
import { openSerialPort } from '../../hardware/serial/serialport-connection.ts';
import { systemTimers, type Timers } from '../../hardware/serial/timers.ts';
import type { Cable } from '../../hardware/simulator/cable.ts';
import { createMemoryCable } from '../../hardware/simulator/memory-cable.ts';
import { createPtyCable } from '../../hardware/simulator/pty-cable.ts';
import { bytes } from './bytes.ts';
import { ManualTimers } from './manual-timers.ts';

/** What a link said, in order. */
export interface Heard<Item> {
  readonly link: Link;
  readonly states: LinkState[];
  readonly items: Item[];
  readonly refused: Refused[];
  /** The last status, the first one included. */
  status(): string;
}

/** A cable with a test at its far end, in memory with hand-moved time or on pseudo-terminals in real time. */
export interface Rig {
  readonly timers: Timers;
  readonly openPort: OpenPort;
  readonly cable: Cable;
  /** All that the program wrote since the cable was last plugged in. */
  received(): string;
  /** Writes at the far end. */
  send(text: string): void;
  /** Writes this ten times a second until told to stop. */
  feed(text: string): () => void;
  wait(ms: number): Promise<void>;
  /** Waits until it is so; fails after so many milliseconds. Returns how long it took. */
  until(isSo: () => boolean, withinMs: number): Promise<number>;
  listen<Item>(driver: LinkDriver<Item>): Heard<Item>;
  stop(): Promise<void>;
}

type FarEndSetter = (connection: Connection) => void;

interface Ground {
  readonly timers: Timers;
  readonly openPort: OpenPort;
  readonly cable: Cable;
  wait(ms: number): Promise<void>;
  cleanUp(): Promise<void>;
}

/** A cable in memory. */
export async function memoryGround(farEnd: FarEndSetter): Promise<Ground> {
  const timers = new ManualTimers();
  const cable = createMemoryCable('memory:test', timers, farEnd);
  return {
    timers,
    cable,
    openPort: cable.openPort,
    wait: (ms) => timers.advance(ms),
    cleanUp: async () => {},
  };
}

/** A cable of pseudo-terminals, through the real serial library. */
export async function ptyGround(farEnd: FarEndSetter): Promise<Ground> {
  const folder = await mkdtemp(join(tmpdir(), 'byreside-link-'));
  const cable = await createPtyCable(folder, 'port', farEnd);
  if (cable === null) throw new Error('socat is not installed');
  return {
    timers: systemTimers(),
    cable,
    openPort: openSerialPort,
    wait: (ms) => new Promise((resolve) => setTimeout(resolve, ms)),
    cleanUp: () => rm(folder, { recursive: true, force: true }),
  };
}

/** Sets a rig up, plugged in and silent. */
export async function createRig(ground: (farEnd: FarEndSetter) => Promise<Ground>): Promise<Rig> {
  let far: Connection | null = null;
  let received = '';
  const { timers, openPort, cable, wait, cleanUp } = await ground((connection) => {
    far = connection;
    received = '';
    connection.onData((chunk) => {
      received += Buffer.from(chunk).toString('latin1');
    });
  });
  const links: Link[] = [];
  const stops: (() => void)[] = [];

  function feed(text: string): () => void {
    let handle = timers.set(again, 0);
    function again(): void {
      far?.write(bytes(text));
      handle = timers.set(again, 100);
    }
    const stop = () => timers.clear(handle);
    stops.push(stop);
    return stop;
  }
  async function until(isSo: () => boolean, withinMs: number): Promise<number> {
    const from = timers.now();
    while (!isSo()) {
      if (timers.now() - from > withinMs) throw new Error(`not so within ${withinMs} ms`);
      await wait(5);
    }
    return timers.now() - from;
  }
  function listen<Item>(driver: LinkDriver<Item>): Heard<Item> {
    const states: LinkState[] = [];
    const items: Item[] = [];
    const refused: Refused[] = [];
    const link = createLink({
      path: cable.path,
      baud: 9600,
      driver,
      openPort,
      timers,
      random: () => 0.5,
      onState: (state) => states.push(state),
      onItem: (item) => items.push(item),
      onRefused: (one) => refused.push(one),
    });
    links.push(link);
    return { link, states, items, refused, status: () => link.state.status };
  }
  return {
    timers,
    openPort,
    cable,
    received: () => received,
    send: (text) => far?.write(bytes(text)),
    feed,
    wait,
    until,
    listen,
    async stop() {
      for (const stop of stops) stop();
      await Promise.all(links.map((link) => link.stop()));
      await cable.stop();
      await cleanUp();
    },
  };
}

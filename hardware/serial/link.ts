import { unreachable } from '../../core/unreachable.ts';
import { retryDelayMs } from './backoff.ts';
import type { Connection, OpenPort } from './connection.ts';
import type { LinkDriver, Received, Refused } from './link-driver.ts';
import { type LinkEffect, type LinkEvent, type LinkRules, nextLink } from './link-machine.ts';
import type { LinkState, LostReason } from './link-state.ts';
import { OpenFailure } from './open-failure.ts';
import { type Poller, startPoller } from './poller.ts';
import type { TimerHandle, Timers } from './timers.ts';

/** How long after opening what arrives is dropped: adapters and woken boards send rubbish, and buffers hold old lines. */
const SETTLE_MS = 250;
/** How long a silent connection is kept before it is closed and opened anew. */
const REOPEN_AFTER_MS = 3000;

/** What happened on a link since it was made; counts only grow. */
export interface LinkCounters {
  /** Successful opens. */
  readonly opens: number;
  /** Times an open connection was lost or given up. */
  readonly losses: number;
  /** Good frames. */
  readonly frames: number;
  readonly badFrames: number;
  readonly discardedBytes: number;
}

/** What a link needs, and whom it tells. */
export interface LinkOptions<Item> {
  readonly path: string;
  readonly baud: number;
  readonly driver: LinkDriver<Item>;
  readonly openPort: OpenPort;
  readonly timers: Timers;
  /** 0 (included) to 1 (excluded), for the jitter of retries. */
  readonly random: () => number;
  /** Called at every change of status or reason; a link begins as `opening` without a call. */
  readonly onState: (state: LinkState) => void;
  /** Called for good frames, and only while the state is `ready`. */
  readonly onItem: (item: Item) => void;
  /** Called for what came to nothing. */
  readonly onRefused?: (refused: Refused) => void;
}

/** A line to one device that is opened, watched and opened again until it is stopped. */
export interface Link {
  readonly state: LinkState;
  readonly counters: LinkCounters;
  /** Writes a command at once and only while ready; otherwise false, and the command is forgotten, never kept. */
  send(bytes: Uint8Array): boolean;
  /** Ends it for good; resolves when the port is free. No listener is called once this was called. */
  stop(): Promise<void>;
}

/** Starts a link; it never gives up by itself. */
export function createLink<Item>(options: LinkOptions<Item>): Link {
  const { driver, timers } = options;
  const rules: LinkRules = {
    settleMs: SETTLE_MS,
    reopenAfterMs: REOPEN_AFTER_MS,
    readyWhen: driver.readyWhen,
    silentAfterMs: driver.silentAfterMs,
  };
  const counters = { opens: 0, losses: 0, frames: 0, badFrames: 0, discardedBytes: 0 };
  let state: LinkState = { status: 'opening' };
  let connection: Connection | null = null;
  /** Whether what the connection says counts; before, it only lets the session find where its frames begin. */
  let listening = false;
  let poller: Poller | null = null;
  let timer: TimerHandle | null = null;
  let lastItemAt = 0;
  let stopped = false;
  /** Resolves when this link holds no port: one open or close at a time. */
  let portFree: Promise<void> = Promise.resolve();

  function handle(event: LinkEvent): void {
    if (stopped) return;
    const before = state;
    const step = nextLink(state, event, rules);
    state = step.state;
    for (const effect of step.effects) run(effect);
    if (before.status !== state.status || reasonOf(before) !== reasonOf(state)) options.onState(state);
  }

  function run(effect: LinkEffect): void {
    switch (effect.do) {
      case 'open':
        portFree = portFree.then(open);
        return;
      case 'close':
        counters.losses += 1;
        letGo();
        return;
      case 'listen':
        listen();
        return;
      case 'wait':
        wake(effect.ms);
        return;
      case 'retry':
        wake(retryDelayMs(effect.attempt, options.random));
        return;
      default:
        unreachable(effect);
    }
  }

  async function open(): Promise<void> {
    if (stopped) return;
    let opened: Connection;
    try {
      opened = await options.openPort(options.path, options.baud);
    } catch (error) {
      const failure = error instanceof OpenFailure ? error : new OpenFailure('other', options.path, error);
      handle({ type: 'open-failed', reason: failure.code, remedy: failure.remedy });
      return;
    }
    if (stopped) return opened.close();
    connection = opened;
    counters.opens += 1;
    listening = false;
    // A session may still speak after its connection was lost: by then it is another's turn.
    const push = driver.openSession((received) => {
      if (listening && connection === opened) receive(received);
    });
    opened.onData((chunk) => {
      if (!listening) receive({ kind: 'discarded', bytes: chunk.length, reason: 'settling' });
      push(chunk);
    });
    handle({ type: 'opened' });
    opened.onClose(() => {
      if (connection === opened) handle({ type: 'closed' });
    });
  }

  function listen(): void {
    const current = connection;
    if (current === null) return;
    listening = true;
    if (driver.poll !== null) poller = startPoller(driver.poll, (bytes) => current.write(bytes), timers);
  }

  function receive(received: Received<Item>): void {
    if (received.kind === 'discarded') {
      counters.discardedBytes += received.bytes;
      options.onRefused?.(received);
      return;
    }
    // A refusal or a broken reply is a reply too: the next question need not wait for the time-out.
    poller?.replied();
    if (received.kind === 'bad') {
      counters.badFrames += 1;
      options.onRefused?.(received);
      return;
    }
    counters.frames += 1;
    lastItemAt = timers.now();
    handle({ type: 'item' });
    // Whoever heard of the new state may have stopped the link.
    if (!stopped) options.onItem(received.item);
  }

  function wake(ms: number): void {
    if (timer !== null) timers.clear(timer);
    const due = timers.now() + ms;
    timer = timers.set(() => {
      const now = timers.now();
      handle({ type: 'timer', quietMs: now - lastItemAt, lateMs: now - due });
    }, ms);
  }

  function letGo(): void {
    poller?.stop();
    poller = null;
    const gone = connection;
    connection = null;
    if (gone !== null) portFree = gone.close();
  }

  run({ do: 'open' });
  return {
    get state() {
      return state;
    },
    get counters() {
      return { ...counters };
    },
    send(bytes) {
      if (stopped || connection === null || state.status !== 'ready') return false;
      connection.write(bytes);
      return true;
    },
    async stop() {
      stopped = true;
      if (timer !== null) timers.clear(timer);
      letGo();
      await portFree;
    },
  };
}

function reasonOf(state: LinkState): LostReason | null {
  return state.status === 'lost' ? state.reason : null;
}

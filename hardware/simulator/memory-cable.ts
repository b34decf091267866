import type { Connection, OpenPort } from '../serial/connection.ts';
import { OpenFailure } from '../serial/open-failure.ts';
import type { Timers } from '../serial/timers.ts';
import type { Cable, FarEnd } from './cable.ts';

/** A cable in memory, and the way to open its near end. */
export interface MemoryCable extends Cable {
  readonly openPort: OpenPort;
}

/** One end of the cable: what arrives for it, until it has ended. */
interface End extends Connection {
  deliver(bytes: Uint8Array): void;
  end(reason: string): void;
  readonly ended: boolean;
}

/**
 * A plugged cable inside this program, for machines without pseudo-terminals and for tests with hand-moved time.
 *
 * What is written arrives at the other end through a timer, never at once; what is under way when the cable is
 * pulled, or finds nobody at the other end, is gone.
 */
export function createMemoryCable(path: string, timers: Timers, farEnd: FarEnd): MemoryCable {
  let plugged = false;
  let near: End | null = null;
  let far: End | null = null;

  function send(bytes: Uint8Array, to: () => End | null): void {
    const copy = bytes.slice();
    const receiver = to();
    timers.set(() => receiver?.deliver(copy), 0);
  }
  async function plug(): Promise<void> {
    if (plugged) return;
    plugged = true;
    far = createEnd((bytes) => send(bytes, () => near));
    farEnd(far);
  }
  async function pull(): Promise<void> {
    plugged = false;
    near?.end('the cable was pulled');
    far?.end('the cable was pulled');
    near = null;
    far = null;
  }
  async function openPort(wanted: string): Promise<Connection> {
    if (!plugged || wanted !== path) throw new OpenFailure('not-found', wanted);
    if (near !== null && !near.ended) throw new OpenFailure('in-use', wanted);
    near = createEnd((bytes) => send(bytes, () => far));
    return near;
  }

  void plug();
  return { path, openPort, plug, pull, stop: pull };
}

function createEnd(send: (bytes: Uint8Array) => void): End {
  let ended: string | null = null;
  let tellData: (chunk: Uint8Array) => void = () => {};
  let tellClose: (reason: string) => void = () => {};
  function end(reason: string): void {
    if (ended !== null) return;
    ended = reason;
    tellClose(reason);
  }
  return {
    get ended() {
      return ended !== null;
    },
    end,
    deliver(bytes) {
      if (ended === null) tellData(bytes);
    },
    write(bytes) {
      if (ended === null) send(bytes);
    },
    async close() {
      end('closed');
    },
    onData(listener) {
      tellData = listener;
    },
    onClose(listener) {
      tellClose = listener;
      if (ended !== null) listener(ended);
    },
  };
}

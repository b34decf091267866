import type { BoardClocks } from '../../../server/barn/board-clocks.ts';

/** Clocks of a board moved by hand. */
export class HandBoard implements BoardClocks {
  start = 'start-1';
  beginsWithSaved = false;
  server = false;
  /** Running time of the board, milliseconds. */
  since = 60_000;
  #wall: number;

  constructor(wallMs: number) {
    this.#wall = wallMs;
  }
  wallMs() {
    return this.#wall;
  }
  sinceStartMs() {
    return this.since;
  }
  uptimeMs() {
    return this.since;
  }
  setByServer() {
    return this.server;
  }
  /** Lets all clocks run. */
  pass(ms: number) {
    this.since += ms;
    this.#wall += ms;
  }
  /** Sets the wall clock alone. */
  set(wallMs: number) {
    this.#wall = wallMs;
  }
}

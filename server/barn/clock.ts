import type { ToldBy } from '../../core/clock/correction.ts';
import { type ClockTrust, lookAtClock, sawRecord, sawStart, tellTime } from '../../core/clock/trust.ts';
import type { Moment } from '../../core/moment.ts';
import { type BoardClocks, boardClocks } from './board-clocks.ts';

/** The clock the kiosk goes by, and whether to believe it. */
export interface Clock {
  /** When the program was built, milliseconds since 1970: no time before it can be. */
  readonly builtAtMs: number;
  now(): Moment;
  /** False while the wall clock stands before what is over or may be a saved one, and once it jumped while the kiosk ran. */
  isTrusted(): boolean;
  /** Below this it is not believed: milliseconds since 1970. */
  floorMs(): number;
  /** Whether a server of time sets it. */
  isSetByServer(): boolean;
  /** Raises the floor; for dates that are believed. */
  sawRecordAt(wallMs: number): void;
  /** Hears how this start of the board was dated by a record written before the program started anew. */
  sawStartAt(startedAtMs: number): void;
  /** Goes by a word on what the time was at a running time of this start of the board, until a server of time is heard. */
  tell(isMs: number, sinceStartMs: number): void;
  /** Who set the clock since this was last asked, so that records of this start may be dated by it; `null` where nobody did. */
  wasSet(): ToldBy | null;
  /** Answers how to put back what is known of the clock as it is now, for a change that the disk refuses. */
  remember(): () => void;
}

/** The clock of this process. `builtAtMs` is when the program was built, milliseconds since 1970. */
export function systemClock(builtAtMs: number, board: BoardClocks = boardClocks()): Clock {
  let trust: ClockTrust = { floorMs: builtAtMs, startedAtMs: null, isSaid: false };
  let before: { readonly trusted: boolean; readonly byServer: boolean } | null = null;
  let set: ToldBy | null = null;

  function look() {
    const byServer = board.setByServer();
    const sinceMs = board.sinceStartMs();
    const seen = lookAtClock(trust, {
      wallMs: board.wallMs(),
      sinceStartMs: sinceMs,
      setByServer: byServer,
      beginsWithSaved: board.beginsWithSaved,
    });
    trust = seen.trust;
    // Heard for the first time it accounts for what came before, also for what came before this program started.
    if (seen.trusted && byServer && before?.byServer !== true) set = 'server';
    else if (seen.trusted && before?.trusted !== true) set = byServer ? 'server' : 'board';
    before = { trusted: seen.trusted, byServer: byServer && seen.trusted };
    return { ...seen, sinceMs };
  }

  return {
    builtAtMs,
    now() {
      const { nowMs, sinceMs } = look();
      return { uptimeMs: board.uptimeMs(), wallMs: nowMs, board: { start: board.start, sinceMs } };
    },
    isTrusted: () => look().trusted,
    floorMs: () => trust.floorMs,
    isSetByServer: () => board.setByServer(),
    sawRecordAt(wallMs) {
      trust = sawRecord(trust, wallMs);
    },
    sawStartAt(startedAtMs) {
      trust = sawStart(trust, startedAtMs);
    },
    tell(isMs, sinceStartMs) {
      trust = tellTime(trust, isMs, sinceStartMs);
      before = null;
      look();
      set = null;
    },
    wasSet() {
      look();
      const by = set;
      set = null;
      return by;
    },
    remember() {
      const known = { trust, before, set };
      return () => {
        ({ trust, before, set } = known);
      };
    },
  };
}

import type { ToldBy } from '../../core/clock/correction.ts';
import { JUMP_MS } from '../../core/clock/trust.ts';
import { type ClockTime, clockTime } from '../../core/dosing/local-time.ts';
import type { BoardTime } from '../../core/moment.ts';
import type { Intent, Refusal } from '../../shared/intent.ts';
import type { BarnContext } from './barn-context.ts';
import { lookForDosedApart } from './dosed-apart.ts';
import { herdOnDisk } from './memory.ts';
import { runRound } from './run-round.ts';

/** A person's word this far from a server's of time is not followed (our own guard: minutes are told, and telling takes some). */
const SERVER_KNOWS_MS = 10 * 60_000;

type SetClock = Extract<Intent, { type: 'set-clock' }>;

/** Takes a person's word on what the time is, and dates what was written in this start of the board by it. */
export function setClock(barn: BarnContext, { at }: SetClock): Refusal | null {
  const { clock, config } = barn;
  const saidMs = clockTime(clockTimeOf(at), config.timeZone);
  if (saidMs < clock.builtAtMs) return 'time-before-program';
  const { wallMs, board } = clock.now();
  if (board === undefined) return 'time-not-kept';
  const byServer = clock.isSetByServer();
  if (byServer && Math.abs(saidMs - wallMs) > SERVER_KNOWS_MS) return 'server-knows-time';
  // The server's is the better time; what the person adds is that records which stand after it are wrong.
  const isMs = byServer ? wallMs : saidMs;
  clock.tell(isMs, board.sinceMs);
  correct(barn, { board, wasMs: wallMs, isMs, told: 'person' });
  return null;
}

function clockTimeOf(at: SetClock['at']): ClockTime {
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0] = at.split(/[-T:]/).map(Number);
  return { year, month, day, hour, minute };
}

/** Dates what was written in this start of the board anew, once the clock was set by a server of time or on the board. */
export function heedClockSet(barn: BarnContext): void {
  const { clock, store } = barn;
  const told = clock.wasSet();
  if (told === null) return;
  const { wallMs, board } = clock.now();
  if (board === undefined) return;
  const startedAtMs = wallMs - board.sinceMs;
  const last = store.clockCorrections.ofStart(board.start);
  if (last !== null && Math.abs(last.isMs - last.board.sinceMs - startedAtMs) <= JUMP_MS) return;
  if (last === null && !store.dayBook.isOwedCorrection(board.start, startedAtMs)) return;
  const wasMs = last === null ? null : last.isMs + (board.sinceMs - last.board.sinceMs);
  correct(barn, { board, wasMs, isMs: wallMs, told });
}

interface Told {
  readonly board: BoardTime;
  readonly wasMs: number | null;
  readonly isMs: number;
  readonly told: ToldBy;
}

function correct(barn: BarnContext, { board, wasMs, isMs, told }: Told): void {
  const { store, memory, config } = barn;
  const entries = store.dayBook.correctClock({
    id: barn.newId(),
    board,
    wasMs: wasMs === null ? null : Math.round(wasMs),
    isMs: Math.round(isMs),
    told,
    by: memory.settings.person,
    timeZone: config.timeZone,
  });
  for (const entry of entries) lookForDosedApart(barn, entry, Math.round(isMs));
  barn.memory = {
    ...memory,
    ...herdOnDisk(store),
    jugs: store.jugs.atHand(),
    herdRevision: memory.herdRevision + 1,
    wormRevision: memory.wormRevision + 1,
  };
  runRound(barn, { type: 'world-changed', what: 'clock' });
}

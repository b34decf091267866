import { unreachable } from '../../core/unreachable.ts';
import type { LinkState, LostReason } from './link-state.ts';

/** What can happen to a link. */
export type LinkEvent =
  | { readonly type: 'opened' }
  | { readonly type: 'open-failed'; readonly reason: LostReason; readonly remedy: string }
  /** A good frame was decoded. */
  | { readonly type: 'item' }
  /** The time last asked for is over, and was `lateMs` ago; `quietMs` is how long ago the last good frame came. */
  | { readonly type: 'timer'; readonly quietMs: number; readonly lateMs: number }
  /** The connection ended by itself. */
  | { readonly type: 'closed' };

/** What the link must then do. There is one timer: `wait` and `retry` replace what was set before. */
export type LinkEffect =
  | { readonly do: 'open' }
  | { readonly do: 'close' }
  /** Start a new session on the open connection, and polling where the device is polled. */
  | { readonly do: 'listen' }
  | { readonly do: 'wait'; readonly ms: number }
  | { readonly do: 'retry'; readonly attempt: number };

/** The times and habits of one kind of device. */
export interface LinkRules {
  readonly settleMs: number;
  readonly readyWhen: 'first-item' | 'settled';
  /** Null: silence is no fault. */
  readonly silentAfterMs: number | null;
  /** How long a silent connection is kept before it is closed and opened anew. */
  readonly reopenAfterMs: number;
}

/** The next state of a link, and what to do about it. */
export interface LinkStep {
  readonly state: LinkState;
  readonly effects: readonly LinkEffect[];
}

const GONE = 'The cable or adapter came out: push it home.';
const MUTE = 'The port is open but no weight comes: check power, cable, and the format and speed set for it.';

/** A process that was too busy to be on time has not read what came meanwhile, and needs this long to do so. */
const LATE_MS = 30;

/** Decides the next state of a link: pure, defined for every pair of state and event. */
export function nextLink(state: LinkState, event: LinkEvent, rules: LinkRules): LinkStep {
  switch (state.status) {
    case 'absent':
      return stay(state);
    case 'opening':
      return whileOpening(state, 0, event, rules);
    case 'lost':
      if (state.opening) return whileOpening(state, state.attempt, event, rules);
      // Only the retry counts here: a late event of the connection that was lost changes nothing.
      return event.type === 'timer'
        ? { state: { ...state, opening: true }, effects: [{ do: 'open' }] }
        : stay(state);
    case 'settling':
    case 'ready':
    case 'silent':
      return whileOpen(state, event, rules);
    default:
      return unreachable(state);
  }
}

function whileOpening(state: LinkState, attempt: number, event: LinkEvent, rules: LinkRules): LinkStep {
  switch (event.type) {
    case 'opened':
      return {
        state: { status: 'settling', stage: 'drain', attempt },
        effects: [{ do: 'wait', ms: rules.settleMs }],
      };
    case 'open-failed':
      return lose(event.reason, event.remedy, attempt);
    case 'item':
    case 'timer':
    case 'closed':
      return stay(state);
    default:
      return unreachable(event);
  }
}

type OpenState = Extract<LinkState, { status: 'settling' | 'ready' | 'silent' }>;

function whileOpen(state: OpenState, event: LinkEvent, rules: LinkRules): LinkStep {
  const draining = state.status === 'settling' && state.stage === 'drain';
  switch (event.type) {
    case 'closed':
      return drop('disconnected', GONE, state.status === 'settling' ? state.attempt : 0);
    case 'item':
      return state.status === 'ready' || draining ? stay(state) : becomeReady(rules);
    case 'timer':
      if (draining) return event.lateMs > LATE_MS ? catchUp(state) : endDrain(state.attempt, rules);
      return state.status === 'ready' ? watch(state, event.quietMs, rules) : endPatience(state, rules);
    case 'opened':
    case 'open-failed':
      return stay(state);
    default:
      return unreachable(event);
  }
}

function catchUp(state: OpenState): LinkStep {
  return { state, effects: [{ do: 'wait', ms: LATE_MS }] };
}

function endDrain(attempt: number, rules: LinkRules): LinkStep {
  if (rules.readyWhen === 'settled') {
    const ready = becomeReady(rules);
    return { state: ready.state, effects: [{ do: 'listen' }, ...ready.effects] };
  }
  // A slow scale may need more than one silence to send its first whole lines.
  const wait = rules.silentAfterMs === null ? [] : [{ do: 'wait', ms: 2 * rules.silentAfterMs } as const];
  return { state: { status: 'settling', stage: 'probe', attempt }, effects: [{ do: 'listen' }, ...wait] };
}

function becomeReady(rules: LinkRules): LinkStep {
  const effects = rules.silentAfterMs === null ? [] : [{ do: 'wait', ms: rules.silentAfterMs } as const];
  return { state: { status: 'ready' }, effects };
}

function watch(state: OpenState, quietMs: number, rules: LinkRules): LinkStep {
  if (rules.silentAfterMs === null) return stay(state);
  const left = rules.silentAfterMs - quietMs;
  if (left > 0) return { state, effects: [{ do: 'wait', ms: left }] };
  return { state: { status: 'silent' }, effects: [{ do: 'wait', ms: rules.reopenAfterMs }] };
}

function endPatience(state: OpenState, rules: LinkRules): LinkStep {
  if (state.status === 'silent') return drop('no-frames', MUTE, 0);
  return { state: { status: 'silent' }, effects: [{ do: 'wait', ms: rules.reopenAfterMs }] };
}

/** Leaves an open connection, whoever ended it: its port must be free before the next open. */
function drop(reason: LostReason, remedy: string, attempt: number): LinkStep {
  const lost = lose(reason, remedy, attempt);
  return { state: lost.state, effects: [{ do: 'close' }, ...lost.effects] };
}

function lose(reason: LostReason, remedy: string, attempt: number): LinkStep {
  return {
    state: { status: 'lost', reason, remedy, attempt: attempt + 1, opening: false },
    effects: [{ do: 'retry', attempt }],
  };
}

function stay(state: LinkState): LinkStep {
  return { state, effects: [] };
}

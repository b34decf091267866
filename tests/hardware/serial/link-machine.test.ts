import { describe, expect, it } from 'vitest';
import {
  type LinkEffect,
  type LinkEvent,
  type LinkRules,
  nextLink,
} from '../../../hardware/serial/link-machine.ts';
import type { LinkState } from '../../../hardware/serial/link-state.ts';

const SCALE: LinkRules = { settleMs: 250, readyWhen: 'first-item', silentAfterMs: 1000, reopenAfterMs: 3000 };
const WAND: LinkRules = { settleMs: 250, readyWhen: 'settled', silentAfterMs: null, reopenAfterMs: 3000 };

const ABSENT: LinkState = { status: 'absent' };
const OPENING: LinkState = { status: 'opening' };
const DRAIN: LinkState = { status: 'settling', stage: 'drain', attempt: 3 };
const PROBE: LinkState = { status: 'settling', stage: 'probe', attempt: 3 };
const READY: LinkState = { status: 'ready' };
const SILENT: LinkState = { status: 'silent' };
const WAITING: LinkState = { status: 'lost', reason: 'not-found', remedy: '', attempt: 3, opening: false };
const RETRYING: LinkState = { ...WAITING, opening: true };

const EVENTS = {
  opened: { type: 'opened' },
  failed: { type: 'open-failed', reason: 'in-use', remedy: 'Close it there.' },
  item: { type: 'item' },
  timer: { type: 'timer', quietMs: 5000, lateMs: 0 },
  closed: { type: 'closed' },
} as const satisfies Record<string, LinkEvent>;

const wait = (ms: number): LinkEffect => ({ do: 'wait', ms });
const retry = (attempt: number): LinkEffect => ({ do: 'retry', attempt });
const CLOSE: LinkEffect = { do: 'close' };
const LISTEN: LinkEffect = { do: 'listen' };

interface Row {
  readonly from: LinkState;
  readonly on: keyof typeof EVENTS;
  readonly to: object;
  readonly effects: readonly LinkEffect[];
}

const lost = (reason: string, attempt: number) => ({ status: 'lost', reason, attempt, opening: false });

/** What happens in each state; a pair that is not listed changes nothing. */
const ROWS: readonly Row[] = [
  {
    from: OPENING,
    on: 'opened',
    to: { status: 'settling', stage: 'drain', attempt: 0 },
    effects: [wait(250)],
  },
  { from: OPENING, on: 'failed', to: lost('in-use', 1), effects: [retry(0)] },
  { from: DRAIN, on: 'timer', to: { ...PROBE }, effects: [LISTEN, wait(2000)] },
  { from: DRAIN, on: 'closed', to: lost('disconnected', 4), effects: [CLOSE, retry(3)] },
  { from: PROBE, on: 'item', to: READY, effects: [wait(1000)] },
  { from: PROBE, on: 'timer', to: SILENT, effects: [wait(3000)] },
  { from: PROBE, on: 'closed', to: lost('disconnected', 4), effects: [CLOSE, retry(3)] },
  { from: READY, on: 'timer', to: SILENT, effects: [wait(3000)] },
  { from: READY, on: 'closed', to: lost('disconnected', 1), effects: [CLOSE, retry(0)] },
  { from: SILENT, on: 'item', to: READY, effects: [wait(1000)] },
  { from: SILENT, on: 'timer', to: lost('no-frames', 1), effects: [CLOSE, retry(0)] },
  { from: SILENT, on: 'closed', to: lost('disconnected', 1), effects: [CLOSE, retry(0)] },
  { from: WAITING, on: 'timer', to: RETRYING, effects: [{ do: 'open' }] },
  {
    from: RETRYING,
    on: 'opened',
    to: { status: 'settling', stage: 'drain', attempt: 3 },
    effects: [wait(250)],
  },
  { from: RETRYING, on: 'failed', to: lost('in-use', 4), effects: [retry(3)] },
];

const STATES = { ABSENT, OPENING, DRAIN, PROBE, READY, SILENT, WAITING, RETRYING };
const PAIRS = Object.entries(STATES).flatMap(([name, from]) =>
  (Object.keys(EVENTS) as (keyof typeof EVENTS)[]).map((on) => ({ name, from, on })),
);

describe('the link machine', () => {
  it.each(PAIRS)(
    'does what the table says in $name on $on, and nothing where it says nothing',
    ({ from, on }) => {
      const row = ROWS.find((one) => one.from === from && one.on === on);
      const step = nextLink(from, EVENTS[on], SCALE);
      expect(step.effects).toEqual(row?.effects ?? []);
      expect(step.state).toMatchObject(row?.to ?? from);
    },
  );

  it('uses every row of the table', () => {
    const used = PAIRS.filter(({ from, on }) => ROWS.some((row) => row.from === from && row.on === on));
    expect(used).toHaveLength(ROWS.length);
  });

  it('waits for the rest of the silence when a frame came while it waited', () => {
    const step = nextLink(READY, { type: 'timer', quietMs: 400, lateMs: 0 }, SCALE);
    expect(step).toEqual({ state: READY, effects: [wait(600)] });
  });

  it('settles on where the process was too busy to be on time, and has not read what came', () => {
    const late = { type: 'timer', quietMs: 5000, lateMs: 400 } as const;
    expect(nextLink(DRAIN, late, SCALE)).toEqual({ state: DRAIN, effects: [wait(30)] });
    expect(nextLink(DRAIN, { ...late, lateMs: 30 }, SCALE).state).toEqual(PROBE);
  });

  it('counts silence of exactly the limit as silence', () => {
    expect(nextLink(READY, { type: 'timer', quietMs: 1000, lateMs: 0 }, SCALE).state).toEqual(SILENT);
  });

  it('is ready once settled for a device that waits for the keeper, and sets no watch', () => {
    expect(nextLink(DRAIN, EVENTS.timer, WAND)).toEqual({ state: READY, effects: [LISTEN] });
    expect(nextLink(READY, EVENTS.timer, WAND)).toEqual({ state: READY, effects: [] });
  });

  it('names a remedy in a sentence whenever it is lost', () => {
    for (const [from, on] of [
      [READY, 'closed'],
      [SILENT, 'timer'],
      [OPENING, 'failed'],
    ] as const) {
      const { state } = nextLink(from, EVENTS[on], SCALE);
      expect(state).toMatchObject({ remedy: expect.stringMatching(/^[A-Z].{8,}\.$/) });
    }
  });
});

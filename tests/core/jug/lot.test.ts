import { describe, expect, test } from 'vitest';
import { reduceMixing } from '../../../core/jug/reduce.ts';
import type { Mixing, MixingEvent } from '../../../core/jug/state.ts';
import { IDLE_MIXING } from '../../../core/jug/world.ts';
import { DAY_MS, HOUR_MS } from '../../../core/moment.ts';
import type { StockLot } from '../../../core/stock/lot.ts';
import { mixingWorld, ON_BENCH, standsAt, WORK } from '../make/mixing.ts';
import { BOTTLES, lotOf } from '../make/stock.ts';
import { NINE_OCLOCK } from '../make/time.ts';

const GOOD = lotOf(3, { id: 'good' });
const OVER = lotOf(3, { id: 'over', expiresAtMs: NINE_OCLOCK - DAY_MS });

/** Does the work with a stock, naming this lot. */
function mix(stock: readonly StockLot[], lotId: string | null, steps = WORK.length): Mixing {
  const [start, ...rest] = WORK;
  const events = [start, { type: 'lot', lotId }, ...rest.slice(0, steps - 1)] as MixingEvent[];
  return events.reduce<Mixing>((mixing, event) => {
    const { mixing: next, refused } = reduceMixing(
      mixing,
      event,
      mixingWorld(ON_BENCH[event.type], { stock }),
    );
    if (refused !== null) throw new Error(`${event.type} was refused: ${refused}`);
    return next;
  }, IDLE_MIXING);
}

function choose(lotId: string | null, stock: readonly StockLot[], clockTrusted = true) {
  const world = mixingWorld(0, { stock, clockTrusted });
  return reduceMixing({ step: 'lot', packetId: 'levamisole-52g' }, { type: 'lot', lotId }, world);
}

describe('the lot of a packet', () => {
  test('is asked where the stock holds one, and only then', () => {
    const start: MixingEvent = { type: 'start', packetId: 'levamisole-52g' };
    const at = (stock: readonly StockLot[]) =>
      reduceMixing(IDLE_MIXING, start, mixingWorld(0, { stock })).mixing.step;
    expect(at([GOOD])).toBe('lot');
    expect(at([lotOf(0), lotOf(1, BOTTLES)])).toBe('dilution');
  });

  test('past its month is a stop for a new jug', () => {
    expect(choose('over', [OVER, GOOD]).refused).toBe('lot-expired');
  });

  test('past its month by a clock nobody trusts is let in', () => {
    expect(choose('over', [OVER], false).mixing.step).toBe('dilution');
  });

  test.each([
    ['nobody knows', 'no-such'],
    ['of another presentation', BOTTLES.id],
  ])('%s is refused', (_which, lotId) => {
    expect(choose(lotId, [GOOD, lotOf(1, BOTTLES)]).refused).toBe('no-such-lot');
  });

  test('goes with the jug: its number, its month and how many packets', () => {
    const { jug } = standsAt({ mixing: mix([GOOD], 'good'), effects: [], refused: null }, 'label');
    expect(jug.stock).toEqual({
      lotId: 'good',
      lot: 'A12',
      expiresAtMs: GOOD.expiresAtMs,
      pieces: { unit: 'piece', value: 1 },
    });
  });

  test('that is not from the stock leaves the jug without one', () => {
    const { jug } = standsAt({ mixing: mix([GOOD], null), effects: [], refused: null }, 'label');
    expect(jug.stock).toBeNull();
  });

  test('ends the life of the jug with its month', () => {
    const soon = lotOf(1, { id: 'soon', expiresAtMs: NINE_OCLOCK + 3 * HOUR_MS });
    const { jug } = standsAt({ mixing: mix([soon], 'soon'), effects: [], refused: null }, 'label');
    expect(jug.useByMs).toBe(soon.expiresAtMs);
  });
});

describe('a mix given up', () => {
  const cancel = (mixing: Mixing) =>
    reduceMixing(mixing, { type: 'cancel' }, mixingWorld(0, { stock: [GOOD] }));
  const one = { do: 'take-stock', lotId: 'good', pieces: { unit: 'piece', value: 1 } };

  test.each([
    ['before the powder', 4, []],
    ['with the powder in', 6, [one]],
    ['at the label', 7, [one]],
  ])('%s', (_when, steps, effects) => {
    expect(cancel(mix([GOOD], 'good', steps)).effects).toEqual(effects);
  });

  test('takes nothing where the powder was not from the stock', () => {
    expect(cancel(mix([GOOD], null, 6)).effects).toEqual([]);
  });
});

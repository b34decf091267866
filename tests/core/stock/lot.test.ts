import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countAnew, takeFrom, throwAway } from '../../../core/stock/change.ts';
import type { StockChange, StockEvent } from '../../../core/stock/event.ts';
import { freshLot, type StockLot, tally, withEvent } from '../../../core/stock/lot.ts';
import { money } from '../../../core/stock/money.ts';
import { pieces } from '../../../core/stock/pieces.ts';
import { happened, lotFacts, lotOf, TEN_FOR } from '../make/stock.ts';

/** What a keeper may do to a lot, in quarters of a packet. */
type Deed = readonly ['receive' | 'take' | 'throw' | 'count', number];
const deed: fc.Arbitrary<Deed> = fc.tuple(
  fc.constantFrom('receive' as const, 'take' as const, 'throw' as const, 'count' as const),
  fc.integer({ min: 0, max: 40 }).map((quarters) => quarters / 4),
);

function changesOf(lot: StockLot, [what, count]: Deed): readonly StockChange[] {
  if (what === 'receive') return [{ kind: 'received', pieces: pieces(Math.ceil(count)), price: null }];
  if (what === 'take') return takeFrom(lot, pieces(count), 'jug-1');
  if (what === 'count') return [countAnew(lot, pieces(count))];
  const change = throwAway(lot, pieces(count), 'spoilt');
  return change === 'more-than-on-hand' ? [] : [change];
}

function run(deeds: readonly Deed[]): { lot: StockLot; events: StockEvent[]; least: number } {
  let lot = freshLot(lotFacts());
  let least = 0;
  const events: StockEvent[] = [];
  for (const each of deeds)
    for (const change of changesOf(lot, each)) {
      events.push(happened(change));
      lot = withEvent(lot, happened(change));
      least = Math.min(least, lot.onHand.value);
    }
  return { lot, events, least };
}

describe('any deeds of a keeper', () => {
  test('never leave less than nothing', () => {
    fc.assert(fc.property(fc.array(deed), (deeds) => run(deeds).least === 0));
  });

  test('leave what came in and was found, less what went', () => {
    fc.assert(
      fc.property(fc.array(deed), (deeds) => {
        const { lot, events } = run(deeds);
        let sum = 0;
        for (const event of events) {
          if (event.kind === 'received') sum += event.pieces.value;
          else if (event.kind === 'counted') sum += event.difference;
          else sum -= event.pieces.value;
        }
        expect(lot.onHand.value).toBeCloseTo(sum, 6);
      }),
    );
  });

  test('come to the same when read from the disk in one go', () => {
    fc.assert(
      fc.property(fc.array(deed), (deeds) => {
        const { lot, events } = run(deeds);
        expect(tally([lotFacts()], events)).toEqual([lot]);
      }),
    );
  });

  test('take more than is there only behind a count that tells the difference', () => {
    fc.assert(
      fc.property(fc.array(deed), fc.integer({ min: 1, max: 80 }), (deeds, quarters) => {
        const { lot } = run(deeds);
        const changes = takeFrom(lot, pieces(quarters / 4), null);
        const surplus = quarters / 4 - lot.onHand.value;
        expect(changes.map(({ kind }) => kind)).toEqual(surplus > 0 ? ['counted', 'taken'] : ['taken']);
        if (surplus > 0) expect(changes[0]).toMatchObject({ difference: surplus });
      }),
    );
  });
});

describe('a lot', () => {
  test('refuses to lose more than it has, so that a bug shows', () => {
    const lot = lotOf(1);
    expect(() => withEvent(lot, happened({ kind: 'taken', pieces: pieces(2), jugId: null }))).toThrow(
      RangeError,
    );
    expect(throwAway(lot, pieces(2), 'lost')).toBe('more-than-on-hand');
  });

  test('used up in thirds of a weighed packet holds nothing, not a rest of rounding', () => {
    const third = happened({ kind: 'taken', pieces: pieces(1 / 3), jugId: null });
    const lot = [third, third, third].reduce(withEvent, lotOf(1));
    expect(lot.onHand.value).toBe(0);
  });

  test('keeps the difference of a count on either side', () => {
    expect(countAnew(TEN_FOR, pieces(8.5))).toMatchObject({ difference: -1.5 });
    expect(countAnew(TEN_FOR, pieces(11))).toMatchObject({ difference: 1 });
  });

  test('sums up what was paid, and begins anew in another currency', () => {
    const more = (minor: number, currency: string) =>
      happened({ kind: 'received', pieces: pieces(5), price: money(currency, minor) });
    expect(withEvent(TEN_FOR, more(5_600, 'EUR')).paid).toEqual({
      total: money('EUR', 18_000),
      pieces: pieces(15),
    });
    expect(withEvent(TEN_FOR, more(5_600, 'USD')).paid).toEqual({
      total: money('USD', 5_600),
      pieces: pieces(5),
    });
    expect(withEvent(TEN_FOR, happened({ kind: 'received', pieces: pieces(5), price: null })).paid).toEqual(
      TEN_FOR.paid,
    );
  });
});

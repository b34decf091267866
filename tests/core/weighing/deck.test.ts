import { describe, expect, test } from 'vitest';
import { BLANK_DECK, feedDeck } from '../../../core/weighing/deck.ts';
import { feedAll, stepOnWith } from '../make/deck.ts';
import { makeReading, PLATFORM, readings } from '../make/reading.ts';

const standing = stepOnWith(() => 40_000, 4000).deck;

describe('a weight is held', () => {
  test('when an animal steps on from zero and stands', () => {
    expect(standing.verdict).toBe('held');
    expect(standing.held?.mass.value).toBe(40_000);
    expect(standing.held?.changedFrom).toBeNull();
  });

  test('after the scale has said stepping on, then settling', () => {
    const { verdicts } = stepOnWith(() => 40_000, 4000);
    expect([...new Set(verdicts)]).toEqual(['empty', 'stepping-on', 'settling', 'held']);
  });
});

describe('no weight is held', () => {
  test('when the load is there from the first reading', () => {
    const { deck, holds } = feedAll(readings(0, 8000, 10, () => 40_000));
    expect(holds).toEqual([]);
    expect(deck.verdict).toBe('not-zeroed');
  });

  test.each([150, 300, -300])('when the deck stood at %d g before, for longer than the grace', (residue) => {
    const before = readings(0, 4000, 10, () => residue);
    const { holds } = feedAll([...before, ...readings(4000, 6000, 10, () => 40_000)]);
    expect(holds).toEqual([]);
  });

  test('when only a flag of the scale says zero while the load is there', () => {
    expect(feedAll(readings(0, 8000, 10, () => 40_000, { zero: true })).holds).toEqual([]);
  });

  test('when zero was seen too long ago', () => {
    const zero = readings(0, 500, 10, () => 0);
    const residue = readings(500, 3000, 10, () => 300);
    expect(feedAll([...zero, ...residue, ...readings(3500, 6000, 10, () => 40_000)]).holds).toEqual([]);
  });

  test.each([
    ['net', { net: true }],
    ['over capacity by its own word', { fault: 'over' }],
    ['not displayed', { fault: 'not-displayed' }],
  ] as const)('from readings that are %s', (_, over) => {
    const empty = readings(0, 1000, 10, () => 0);
    const { holds, deck } = feedAll([...empty, ...readings(1000, 6000, 10, () => 40_000, over)]);
    expect(holds).toEqual([]);
    expect(deck.live).toBeNull();
  });

  test('over the capacity, even when the scale raises no fault', () => {
    const { holds, deck } = stepOnWith(() => 200_050, 6000);
    expect(holds).toEqual([]);
    expect(deck).toMatchObject({ verdict: 'fault', live: null });
  });

  test('from a bucket put down and lifted within a second', () => {
    const on = readings(1000, 900, 10, () => 5000);
    const { holds, verdicts } = feedAll([
      ...readings(0, 1000, 10, () => 0),
      ...on,
      ...readings(1900, 1000, 10, () => 0),
    ]);
    expect(holds).toEqual([]);
    expect(verdicts.at(-1)).toBe('empty');
  });
});

describe('a blank deck', () => {
  test('holds nothing and has no live value', () => {
    expect(BLANK_DECK).toMatchObject({
      verdict: 'blank',
      live: null,
      held: null,
      zeroAt: null,
      onSince: null,
    });
  });

  test('that is fed again while the animal still stands there does not hold it without a zero', () => {
    expect(
      feedAll(
        readings(9000, 8000, 10, () => 40_000),
        BLANK_DECK,
      ).holds,
    ).toEqual([]);
  });
});

describe('leaving', () => {
  test('a hop of 300 ms is no departure: the weight and the visit stay', () => {
    const hop = [...readings(5000, 300, 10, () => 0), ...readings(5300, 3000, 10, () => 40_000)];
    const { events, deck } = feedAll(hop, standing);
    expect(events).toEqual([]);
    expect(deck.held).toBe(standing.held);
  });

  test('half a second of empty deck is one, and the held weight stays until the next step-on', () => {
    const { events, deck } = feedAll(
      readings(5000, 600, 10, () => 0),
      standing,
    );
    expect(events).toEqual([{ type: 'stepped-off' }]);
    expect(deck.held).toBe(standing.held);
    expect(deck.live?.value).toBe(0);
  });

  test('the next step-on ends the held weight at once', () => {
    const off = feedAll(
      readings(5000, 1000, 10, () => 0),
      standing,
    ).deck;
    const on = feedDeck(off, makeReading(6000, 38_000), PLATFORM);
    expect(on).toMatchObject({ verdict: 'stepping-on', held: null });
  });

  test('dung left on the deck does not keep the visit open for the next animal', () => {
    const { events } = feedAll(
      [...readings(5000, 5000, 10, () => 300), ...readings(10_000, 6000, 10, () => 38_000)],
      standing,
    );
    expect(events.map(({ type }) => type)).toContain('stepped-off');
  });

  test('dung left on the deck is never weighed into the next animal', () => {
    const { holds } = feedAll(
      [...readings(5000, 5000, 10, () => 300), ...readings(10_000, 6000, 10, () => 38_300)],
      standing,
    );
    expect(holds).toEqual([]);
  });

  test.each([
    ['over its capacity', { fault: 'over' }],
    ['showing net', { net: true }],
  ] as const)(
    'an animal that changed places while the scale was %s is not held without a zero',
    (_, over) => {
      const unseen = readings(5000, 30_000, 10, () => 90_000, over);
      const { holds } = feedAll([...unseen, ...readings(35_000, 6000, 10, () => 30_000)], standing);
      expect(holds).toEqual([]);
    },
  );
});

describe('the live value', () => {
  test('is the reading while it can be used, and nothing while it cannot', () => {
    expect(standing.live?.value).toBe(40_000);
    expect(feedDeck(standing, makeReading(5000, 40_000, { net: true }), PLATFORM).live).toBeNull();
    expect(feedDeck(standing, makeReading(5000, 40_000, { fault: 'over' }), PLATFORM).live).toBeNull();
    expect(feedDeck(BLANK_DECK, makeReading(0, -50), PLATFORM).live?.value).toBe(-50);
  });

  test('is back at once when the readings can be used again', () => {
    const net = feedDeck(standing, makeReading(5000, 40_000, { net: true }), PLATFORM);
    expect(feedDeck(net, makeReading(5100, 40_000), PLATFORM).live?.value).toBe(40_000);
  });
});

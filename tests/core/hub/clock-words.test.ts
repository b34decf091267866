import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ClockSaid, clockWords } from '../../../core/hub/clock-words.ts';

const NOON = Date.UTC(2027, 3, 12, 12);
const MINUTE_MS = 60_000;

/** A word said so many minutes into a start, by a clock of events of its own. */
function said(id: string, over: Partial<ClockSaid> & { start?: string; isMs?: number } = {}): ClockSaid {
  const { start = 'start-1', isMs = NOON, ...rest } = over;
  const board = { start, sinceMs: 10 * MINUTE_MS };
  const word = { id, board, wasMs: null, isMs, told: 'person', by: 'Wren', timeZone: 'UTC' } as const;
  return { id, clock: '000000000001000.00000', after: [], ahead: [], word, ...rest };
}

const last = (words: readonly ClockSaid[], start = 'start-1') => clockWords(words).byStart.get(start)?.id;

describe('of the words on one start', () => {
  test('the one that knew of the others counts, whatever the clocks of the events say', () => {
    const first = said('first', { clock: '000009000000000.00000' });
    const second = said('second', { after: ['first'] });
    expect(last([second, first])).toBe('second');
    expect(last([first, second])).toBe('second');
  });

  test('of two that did not know of each other the later clock counts', () => {
    const [early, late] = [said('early'), said('late', { clock: '000000000002000.00000' })];
    expect(last([late, early])).toBe('late');
  });

  test('one that was replaced speaks against nothing any more', () => {
    const first = said('first', { isMs: NOON - MINUTE_MS, ahead: ['t1', 't2'] });
    const second = said('second', { after: ['first'], ahead: ['t2'] });
    expect(clockWords([first, second]).wasBefore).toEqual(new Map([['t2', NOON]]));
  });
});

test('of words on several starts that speak against a record the earliest counts', () => {
  const words = [
    said('a', { start: 's-a', isMs: NOON + 5 * MINUTE_MS, ahead: ['t1'] }),
    said('b', { start: 's-b', isMs: NOON, ahead: ['t1'] }),
  ];
  expect(clockWords(words).wasBefore).toEqual(new Map([['t1', NOON]]));
  expect(clockWords([]).byStart.size).toBe(0);
});

test('whatever order words come in, they come to the same', () => {
  const ids = ['a', 'b', 'c', 'd', 'e', 'f'];
  const word = fc.record({
    start: fc.constantFrom('s-1', 's-2'),
    minutes: fc.integer({ min: -3, max: 3 }),
    clock: fc.integer({ min: 1, max: 3 }),
    knew: fc.subarray(ids),
    ahead: fc.subarray(['t1', 't2', 't3']),
  });
  fc.assert(
    fc.property(
      fc.array(word, { minLength: 2, maxLength: 6 }).chain((words) => {
        const all = words.map(({ start, minutes, clock, knew, ahead }, place) =>
          said(ids[place] as string, {
            start,
            isMs: NOON + minutes * MINUTE_MS,
            clock: `00000000000${clock}000.00000`,
            // Only of earlier ones: no kiosk knows of what is still to be said.
            after: knew.filter((id) => ids.indexOf(id) < place),
            ahead,
          }),
        );
        return fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length }));
      }),
      ([one, other]) => {
        const [a, b] = [clockWords(one), clockWords(other)];
        expect(new Map([...b.byStart].sort())).toEqual(new Map([...a.byStart].sort()));
        expect(new Map([...b.wasBefore].sort())).toEqual(new Map([...a.wasBefore].sort()));
      },
    ),
    { numRuns: 500 },
  );
});

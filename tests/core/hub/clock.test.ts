import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  BELIEVED_AHEAD_MS,
  clockText,
  compareClocks,
  FIRST_CLOCK,
  type HybridClock,
  hear,
  readClock,
  tick,
} from '../../../core/hub/clock.ts';

const clock: fc.Arbitrary<HybridClock> = fc.record({
  ms: fc.nat(999_999_999_999),
  count: fc.nat(99_999),
});
const wall = fc.nat(999_999_999_999);

describe('by hand', () => {
  test('the wall goes on: it is followed', () => {
    expect(tick({ ms: 1000, count: 7 }, 1001)).toEqual({ ms: 1001, count: 0 });
  });

  test('two events in one millisecond, or a wall a little back, are told apart by the count', () => {
    expect(tick({ ms: 1000, count: 0 }, 1000)).toEqual({ ms: 1000, count: 1 });
    expect(tick({ ms: 1000, count: 1 }, 400)).toEqual({ ms: 1000, count: 2 });
  });

  test('a count that is full goes over into the next millisecond', () => {
    expect(tick({ ms: 1000, count: 99_999 }, 1000)).toEqual({ ms: 1001, count: 0 });
  });

  test('a wall that was years ahead and is set right is not waited for', () => {
    const years = 9 * 365 * 86_400_000;
    expect(tick({ ms: 1_000_000 + years, count: 4 }, 1_000_000)).toEqual({ ms: 1_000_000, count: 0 });
  });

  test('a peer a minute ahead is followed, one years ahead is not, one behind changes nothing', () => {
    const own = { ms: 1000, count: 3 };
    const near = { ms: 61_000, count: 0 };
    expect(hear(own, near, 1000)).toEqual(near);
    expect(tick(hear(own, near, 1000), 1000)).toEqual({ ms: 61_000, count: 1 });
    expect(hear(own, { ms: 1000 + BELIEVED_AHEAD_MS + 1, count: 0 }, 1000)).toEqual(own);
    expect(hear(own, { ms: 1000, count: 2 }, 1000)).toEqual(own);
  });

  test('what is no clock is refused', () => {
    expect(() => readClock('1000.0')).toThrow('is no hybrid clock');
    expect(clockText({ ms: 1000, count: 3 })).toBe('000000000001000.00003');
  });
});

describe('whatever the clocks', () => {
  test('a clock is never further ahead of the wall than is believed, whatever peers say', () => {
    const heard = fc.array(
      fc.oneof(
        clock.map((peer) => ({ peer })),
        fc.constant(null),
      ),
    );
    fc.assert(
      fc.property(wall, heard, (at, steps) => {
        let own = FIRST_CLOCK;
        for (const step of steps) own = step === null ? tick(own, at) : hear(own, step.peer, at);
        expect(own.ms).toBeLessThanOrEqual(at + BELIEVED_AHEAD_MS + 1);
      }),
    );
  });

  test('while the wall is not back by more than is believed, each event is later than the last and than all heard', () => {
    const step = fc.record({
      by: fc.integer({ min: -1000, max: 5000 }),
      ahead: fc.nat(BELIEVED_AHEAD_MS / 2),
    });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 60 }), (steps) => {
        let at = 1_700_000_000_000;
        let last = tick(FIRST_CLOCK, at);
        for (const { by, ahead } of steps) {
          at += by;
          const peer = { ms: Math.min(at + ahead, last.ms + 10), count: 0 };
          const next = tick(hear(last, peer, at), at);
          expect(compareClocks(next, last)).toBeGreaterThan(0);
          expect(compareClocks(next, peer)).toBeGreaterThan(0);
          last = next;
        }
      }),
    );
  });

  test('text orders as clocks do, and reads back', () => {
    fc.assert(
      fc.property(clock, clock, (a, b) => {
        expect(readClock(clockText(a))).toEqual(a);
        const [x, y] = [clockText(a), clockText(b)];
        expect(Math.sign(compareClocks(a, b))).toBe(x < y ? -1 : x > y ? 1 : 0);
      }),
    );
  });
});

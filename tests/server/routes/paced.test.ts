import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { paced } from '../../../server/routes/paced.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** When the work was done, in milliseconds, of changes at these times; a timer of Node takes 1 ms at least. */
function doneOf(changes: readonly number[], leastMs: number, untilMs = 1000): number[] {
  const done: number[] = [];
  const from = performance.now();
  const work = paced(() => done.push(performance.now() - from), leastMs);
  for (const at of changes) setTimeout(work.soon, at);
  vi.advanceTimersByTime(untilMs);
  return done;
}

test('a change is met at once', () => {
  expect(doneOf([100], 20)).toEqual([101]);
});

test('changes of one moment are one', () => {
  expect(doneOf([100, 100, 100], 20)).toEqual([101]);
});

test('changes close together are met once more, when the time is over', () => {
  expect(doneOf([100, 105, 110], 20)).toEqual([101, 121]);
});

test('a stream faster than the pace is followed at the pace, to its last change', () => {
  const stream = Array.from({ length: 20 }, (_, n) => 100 + 5 * n);
  expect(doneOf(stream, 20)).toEqual([101, 121, 141, 161, 181, 201]);
});

test('nothing is done after the end', () => {
  const done = vi.fn();
  const work = paced(done, 20);
  work.soon();
  work.stop();
  vi.advanceTimersByTime(1000);
  expect(done).not.toHaveBeenCalled();
});

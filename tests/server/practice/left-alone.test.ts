import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { systemTimers } from '../../../hardware/serial/timers.ts';
import { LEFT_ALONE_MS, whenLeftAlone } from '../../../server/practice/left-alone.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

test('a practice ends ten minutes after the last touch, once, and not after it was stopped', () => {
  const end = vi.fn();
  const alone = whenLeftAlone(systemTimers(), end);
  vi.advanceTimersByTime(LEFT_ALONE_MS - 1);
  alone.touched();
  vi.advanceTimersByTime(LEFT_ALONE_MS - 1);
  expect(end).not.toHaveBeenCalled();
  vi.advanceTimersByTime(1);
  expect(end).toHaveBeenCalledOnce();
  const other = whenLeftAlone(systemTimers(), end);
  other.stop();
  vi.advanceTimersByTime(2 * LEFT_ALONE_MS);
  expect(end).toHaveBeenCalledOnce();
});

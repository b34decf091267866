import { expect, test } from 'vitest';
import { FIRST_STEP, FIRST_STEPS, type FirstStart, moveOn } from '../../../core/first-start/first-start.ts';

test('going on leads through every step, and then it is over', () => {
  const seen: FirstStart[] = [];
  let now: FirstStart = FIRST_STEP;
  while (now !== null) {
    seen.push(now);
    const next: FirstStart | 'not-there' = moveOn(now, now, 'next');
    if (next === 'not-there') throw new Error(`no way on from ${now}`);
    now = next;
  }
  expect(seen).toEqual(FIRST_STEPS);
});

test('back undoes going on, and stays at the first step', () => {
  for (const [at, step] of FIRST_STEPS.entries()) {
    expect(moveOn(step, step, 'back')).toBe(FIRST_STEPS[Math.max(0, at - 1)]);
  }
});

test('it can be ended at every step', () => {
  for (const step of FIRST_STEPS) expect(moveOn(step, step, 'end')).toBeNull();
});

test('a tap that comes twice moves once', () => {
  const moved = moveOn('language', 'language', 'next');
  expect(moved).toBe('panel');
  expect(moveOn('panel', 'language', 'next')).toBe('not-there');
  expect(moveOn(null, 'rules', 'next')).toBe('not-there');
});

import { describe, expect, test } from 'vitest';
import { findingsOf } from '../../../core/reduction/findings.ts';
import { isDue, isOpen, progressOf, type TestSample } from '../../../core/reduction/reduction-test.ts';
import type { EggCount } from '../../../core/worms/egg-count.ts';

const DAYS = { fromMs: 100, untilMs: 200 };
const count = (eggs: number): EggCount => ({ eggs, factor: 50, method: 'slide', animals: 1, takenAtMs: 0 });
const animal = (before: number | null, after: number | null, treated = true, at = 0): TestSample => ({
  animalId: `a${at}`,
  treatmentId: treated ? `t${at}` : null,
  before: before === null ? null : count(before),
  after: after === null ? null : count(after),
});
const PAIRED = { design: 'paired', end: null } as const;
const UNPAIRED = { design: 'unpaired', end: null } as const;

describe('a paired test stands at', () => {
  test.each([
    ['before', [animal(null, null), animal(3, null)], 50],
    ['waiting', [animal(2, null), animal(3, null)], 99],
    ['due', [animal(2, null), animal(3, null)], 100],
    ['due', [animal(2, null), animal(3, 0)], 200],
    ['overdue', [animal(2, null), animal(3, 0)], 201],
    ['before', [animal(null, null), animal(null, null)], 500],
    ['done', [animal(2, 0), animal(3, 0), animal(null, null)], 100],
    ['before', [animal(2, 0), animal(3, 0), animal(null, null)], 99],
    ['done', [animal(2, 0), animal(3, 0)], 60],
    ['before', [animal(2, 0), animal(null, null)], 150],
  ] as const)('%s', (step, samples, now) => {
    expect(progressOf(PAIRED, samples, DAYS, now).step).toBe(step);
  });
});

describe('an unpaired test stands at', () => {
  test.each([
    ['waiting', [animal(null, null), animal(null, null, false)], 99],
    ['due', [animal(null, null), animal(null, null, false)], 100],
    ['done', [animal(null, 2), animal(null, 1), animal(null, 40, false), animal(null, 50, false)], 150],
  ] as const)('%s', (step, samples, now) => {
    expect(progressOf(UNPAIRED, samples, DAYS, now).step).toBe(step);
  });
});

test('a test that was ended stands where the keeper put it, and wants nothing', () => {
  for (const [how, step] of [
    ['judged', 'done'],
    ['given-up', 'given-up'],
  ] as const) {
    const progress = progressOf(
      { ...PAIRED, end: { how, atMs: 1, by: 'Kim' } },
      [animal(2, null)],
      DAYS,
      150,
    );
    expect(progress.step).toBe(step);
    expect([isDue(progress), isOpen(progress)]).toEqual([false, false]);
  }
});

test('an untreated group with no egg before tells nothing of a fall', () => {
  const samples = [animal(30, 1), animal(40, 0), animal(0, 5, false), animal(0, 9, false)];
  const found = findingsOf({ design: 'paired', species: 'goat', protocol: 'clinical' }, samples);
  expect(found).toMatchObject({ untreatedFell: null, controlled: null, dropped: 0, result: { ok: true } });
});

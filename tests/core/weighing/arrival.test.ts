import { describe, expect, test } from 'vitest';
import { quietAfterRise, restAfterRise, restBeforeLongRise } from '../../../core/weighing/arrival.ts';
import type { Level } from '../../../core/weighing/level.ts';
import type { Past } from '../../../core/weighing/past.ts';

function past(over: Partial<Past>): Past {
  return {
    rise: 1.2,
    restBelow: 0.1,
    restedAt: 12_000,
    above: 0,
    spellAbove: 0,
    sinceApart: 2,
    stood: 2,
    ...over,
  };
}

function level(over: Partial<Past>): Level {
  return { grams: 40_000, uncertainty: 100, quiet: 2, present: 1, slope: 0, past: past(over) };
}

describe('a load that arrives', () => {
  test('in the time of a walk on needs no rest or quiet of its own', () => {
    expect(restAfterRise(past({}))).toBe(0);
    expect(quietAfterRise(level({}))).toBe(0);
    expect(restBeforeLongRise(past({}))).toBeNull();
  });

  test('at once may be of fore feet, and is rested on for longer', () => {
    expect(restAfterRise(past({ rise: 0.5 }))).toBeGreaterThan(2);
  });

  test('slowly needs more quiet the slower it came', () => {
    const [some, more] = [2.4, 2.55].map((rise) => quietAfterRise(level({ rise })));
    expect(some).toBeGreaterThan(2);
    expect(more).toBeGreaterThan(some ?? 0);
  });

  test.each([
    ['a rest on the fore feet', { restBelow: 1, restedAt: 22_000 }, 4],
    ['a rest at four fifths of itself', { restBelow: 1, restedAt: 32_000 }, 8],
    ['no rest at all', { restBelow: 0.2, restedAt: 22_000 }, 8],
    [
      'a rest on the fore feet, but longer ago than any goat dithers',
      { rise: 5, restBelow: 1, restedAt: 22_000 },
      8,
    ],
  ])('very slowly, behind %s, needs quiet of its own', (_, over, seconds) => {
    expect(quietAfterRise(level({ rise: 3.2, ...over }))).toBe(seconds);
  });

  test('very slowly says where it rested', () => {
    expect(restBeforeLongRise(past({ rise: 3, restedAt: 22_000 }))).toBe(22_000);
  });
});

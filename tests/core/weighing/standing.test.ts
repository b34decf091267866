import { describe, expect, test } from 'vitest';
import { kilograms } from '../../../core/quantity/mass.ts';
import { BLANK_DECK, type Deck, feedDeck } from '../../../core/weighing/deck.ts';
import { type DeckRun, feedAll, stepOnWith } from '../make/deck.ts';
import { makeReading, PLATFORM, readings } from '../make/reading.ts';

const WEIGHT = 40_000;

/** A walk on over 0.9 s, then this share of the weight, by seconds since the first foot. */
function walkOn(share: (s: number) => number): (ms: number) => number {
  return (ms) => {
    const s = ms / 1000;
    const landed = Math.min(
      1,
      0.29 + 0.29 * Number(s > 0.3) + 0.21 * Number(s > 0.6) + 0.21 * Number(s > 0.9),
    );
    const sway = 0.002 * Math.sin(2.1 * s) + 0.0015 * Math.sin(5.3 * s + 1);
    return WEIGHT * landed * (share(s) + sway);
  };
}

function firstOff({ holds }: DeckRun): number {
  return Math.abs((holds[0]?.mass.value ?? Number.NaN) / WEIGHT - 1);
}

describe('an animal that does not stand free', () => {
  test('leans on a gate after it stood: the weight is that of standing, and the leaning is named', () => {
    const run = stepOnWith(
      walkOn((s) => (s > 5 && s < 9 ? 0.88 : 1)),
      12_000,
      20,
    );
    expect(run.holds).toHaveLength(1);
    expect(firstOff(run)).toBeLessThan(0.006);
    expect(run.verdicts).toContain('leaning');
    expect(run.verdicts.at(-1)).toBe('held');
  });

  test('leans on a gate before it is held: nothing is held until it stands free again', () => {
    const run = stepOnWith(
      walkOn((s) => (s > 1.5 && s < 4.5 ? 0.88 : 1)),
      12_000,
      20,
    );
    expect(run.holds).toHaveLength(1);
    expect(firstOff(run)).toBeLessThan(0.006);
    expect((run.holds[0]?.at ?? 0) - 1000).toBeGreaterThan(4500);
  });

  test.each([0.9, 0.75, 0.5])(
    'has a foot off and carries %d of itself for 2 s: that is not held',
    (share) => {
      const run = stepOnWith(
        walkOn((s) => (s > 1.5 && s < 3.5 ? share : 1)),
        12_000,
        20,
      );
      expect(run.holds).toHaveLength(1);
      expect(firstOff(run)).toBeLessThan(0.006);
    },
  );

  test('bears a hand for 3 s after it is held: the weight stays', () => {
    const run = stepOnWith(
      walkOn((s) => (s > 5 && s < 8 ? 1.12 : 1)),
      12_000,
      20,
    );
    expect(run.holds).toHaveLength(1);
    expect(firstOff(run)).toBeLessThan(0.006);
    expect(run.verdicts).toContain('leaning');
  });

  test('is joined by a second: the platform says two animals at once, and a new weight says what it replaced', () => {
    const run = stepOnWith(
      walkOn((s) => (s > 5 ? 1.6 : 1)),
      12_000,
      20,
    );
    expect(firstOff(run)).toBeLessThan(0.006);
    expect(run.verdicts.at(-120)).toBe('two-animals');
    expect(run.holds[1]?.changedFrom).toEqual(run.holds[0]?.mass);
  });

  test('is joined by a second before it is held: nothing is held', () => {
    const load = (ms: number) => walkOn(() => 1)(ms) + Math.min(0.6 * WEIGHT, Math.max(0, 12 * (ms - 1700)));
    const run = stepOnWith(load, 7000, 20);
    expect(run.holds).toEqual([]);
    expect(run.verdicts).toContain('two-animals');
  });

  test('leaves after half a second with all feet on: nothing is held', () => {
    expect(
      stepOnWith(
        walkOn((s) => (s < 1.4 ? 1 : 0)),
        5000,
        20,
      ).holds,
    ).toEqual([]);
  });
});

describe('an animal that is long in coming', () => {
  /** Legs set on the deck at these seconds; between ground and deck the load wanders. */
  function ledOn(lands: readonly number[], stands: (s: number) => number = () => 1) {
    return (ms: number) => {
      const s = ms / 1000;
      const on = [0.29, 0.29, 0.21, 0.21].reduce(
        (sum, share, leg) => sum + (s >= (lands[leg] ?? 0) ? share : 0),
        0,
      );
      const between = 4 * on * (1 - on) * 0.03 * Math.sin(4 * s);
      const sway = 0.002 * Math.sin(2.1 * s) + 0.0015 * Math.sin(5.3 * s + 1);
      return WEIGHT * on * (stands(s) + between + sway);
    };
  }

  test.each([
    ['leg by leg over 4 s', [0, 1.3, 2.7, 4]],
    ['and rests on its fore feet for 3 s', [0, 0.3, 3.2, 3.5]],
  ])('%s: it is held once it stands still, and the load it rested at is named', (_, lands) => {
    const run = stepOnWith(ledOn(lands), 18_000, 20);
    expect(run.holds).toHaveLength(1);
    expect(firstOff(run)).toBeLessThan(0.006);
    expect(run.holds[0]?.changedFrom?.value).toBeLessThan(0.9 * WEIGHT);
    expect((run.holds[0]?.at ?? 0) - 1000).toBeGreaterThan(1000 * (lands[3] ?? 0) + 3000);
  });

  test('and then leans is not held as it leans', () => {
    const run = stepOnWith(
      ledOn([0, 1.3, 2.7, 4], (s) => (s > 4.2 && s < 8 ? 0.85 : 1)),
      22_000,
      20,
    );
    expect(run.holds).toHaveLength(1);
    expect(firstOff(run)).toBeLessThan(0.006);
  });

  test('with another at its heels is two animals, and nothing is held', () => {
    const second = (ms: number) => 0.4 * walkOn(() => 1)(ms - 1800) * Number(ms >= 1800);
    const run = stepOnWith((ms) => walkOn(() => 1)(ms) + second(ms), 9000, 20);
    expect(run.holds).toEqual([]);
    expect(run.verdicts).toContain('two-animals');
  });
});

test('in the first seconds a coarse dose is held no sooner than a usual one', () => {
  const restless = (s: number) => 1 + 0.006 * Math.sin(7 * s) + 0.004 * Math.sin(3.1 * s);
  const all = [...readings(0, 1000, 20, () => 0), ...readings(1000, 9000, 20, walkOn(restless))];
  const heldAt = (need: number) => {
    let deck = BLANK_DECK;
    for (const reading of all) {
      deck = feedDeck(deck, reading, PLATFORM, need);
      if (deck.held !== null) return deck.held.at - 1000;
    }
    return Number.POSITIVE_INFINITY;
  };
  expect(heldAt(0.05)).toBeGreaterThan(900 + 1500);
  expect(heldAt(0.05)).toBeLessThan(heldAt(0.003));
});

describe('a scale that is not ideal', () => {
  test.each([5, 8, 12])('on a deck that rings at %d Hz the weight is held within half a per cent', (hz) => {
    const ringing = (s: number) =>
      1 + 0.08 * Math.exp(-1.5 * Math.max(0, s - 0.9)) * Math.sin(2 * Math.PI * hz * s);
    expect(firstOff(stepOnWith(walkOn(ringing), 8000, 50))).toBeLessThan(0.005);
  });

  test('of four readings a second holds a calm animal within 4 s, and never on fewer than three of them', () => {
    const { holds } = stepOnWith(
      walkOn(() => 1),
      8000,
      4,
    );
    expect((holds[0]?.at ?? Number.NaN) - 1000).toBeLessThan(4000);
    expect((holds[0]?.at ?? Number.NaN) - 1000).toBeGreaterThan(900 + 750);
  });

  test('whose filter lags by half a second is waited for', () => {
    const lagging = (s: number) => 1 - 0.25 * Math.exp(-Math.max(0, s - 0.9) / 0.5);
    expect(firstOff(stepOnWith(walkOn(lagging), 8000, 20))).toBeLessThan(0.008);
  });

  test('too coarse for a kid of 3 kg still holds, and owns up to its division', () => {
    const kid = (ms: number) => Math.round((3040 * walkOn(() => 1)(ms)) / WEIGHT / 100) * 100;
    const coarse = { capacity: kilograms(200), division: { unit: 'g', value: 100 } } as const;
    const all = [...readings(0, 1000, 20, () => 0), ...readings(1000, 6000, 20, () => 0)];
    const deck = all.reduce<Deck>(
      (now, { at }) => feedDeck(now, makeReading(at, at < 1000 ? 0 : kid(at - 1000)), coarse),
      BLANK_DECK,
    );
    expect(Math.abs((deck.held?.mass.value ?? 0) - 3040)).toBeLessThanOrEqual(50);
    expect(deck.held?.uncertainty.value).toBeGreaterThanOrEqual(100 / Math.sqrt(3));
  });

  test('with long silences between readings holds nothing on a load seen twice', () => {
    const sparse = [0, 500, 1000].map((at) => makeReading(at, 0));
    const loaded = [1500, 3500, 5500].map((at) => makeReading(at, WEIGHT));
    expect(feedAll([...sparse, ...loaded.slice(0, 2)]).holds).toEqual([]);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pairedCounts, type TestCounts, unpairedCounts } from '../../../core/reduction/counts.ts';
import { judgeReduction } from '../../../core/reduction/judge.ts';
import { onRawEggs } from '../../../core/reduction/thresholds.ts';
import { verdictOfChances, verdictOfLimits } from '../../../core/reduction/verdict.ts';
import type { EggCount } from '../../../core/worms/egg-count.ts';
import { EPGS, VIGNETTE } from '../../oracles/reduction.ts';

function rawOf(
  before: readonly number[],
  after: readonly number[],
  design: 'paired' | 'unpaired' = 'paired',
) {
  return { design, before, after, factorBefore: 50, factorAfter: 50 } satisfies TestCounts;
}

const sheep = rawOf(
  EPGS.before.map((epg) => epg / EPGS.factor),
  EPGS.after.map((epg) => epg / EPGS.factor),
);

function sample(eggs: number, change: Partial<EggCount> = {}): EggCount {
  return { eggs, factor: 50, method: 'McMaster', animals: 1, takenAtMs: 0, ...change };
}

describe('the verdict of the guideline', () => {
  const at = { expected: 0.99, lowest: 0.9 };

  test.each([
    [0.5, 0.85, 'resistant'],
    [0.85, 0.95, 'resistant'],
    [0.92, 0.98, 'low-resistant'],
    [0.9, 0.9899, 'low-resistant'],
    [0.92, 0.99, 'susceptible'],
    [0.995, 0.999, 'susceptible'],
    [0.8, 0.99, 'inconclusive'],
    [-3, 1, 'inconclusive'],
  ] as const)('limits %d to %d are %s', (lower, upper, verdict) => {
    expect(verdictOfLimits({ lower, upper }, at)).toBe(verdict);
  });

  test.each([
    [0.05, 0.051, 'resistant'],
    [0.01, 0.05, 'low-resistant'],
    [0.06, 0.05, 'susceptible'],
    [0.06, 0.06, 'inconclusive'],
  ] as const)('chances %d and %d are %s', (resistance, susceptibility, verdict) => {
    expect(verdictOfChances({ resistance, susceptibility })).toBe(verdict);
  });
});

describe('fourteen sheep under a benzimidazole', () => {
  test('are resistant by the delta method, with its printed limits', () => {
    const judged = judgeReduction(sheep, 'sheep', 'clinical');
    if (!judged.ok) throw new Error(judged.why);
    expect(judged).toMatchObject({ by: 'delta', verdict: 'resistant', eggs: EPGS.eggs, extremeCare: false });
    expect(judged.limits.lower * 100).toBeCloseTo(EPGS.deltaPaired90[0], 9);
    expect(judged.limits.upper * 100).toBeCloseTo(EPGS.deltaPaired90[1], 9);
  });

  test('without their pairing tell nothing that is sure', () => {
    const judged = judgeReduction({ ...sheep, design: 'unpaired' }, 'sheep', 'clinical');
    expect(judged).toMatchObject({ verdict: 'resistant' });
    if (!judged.ok) throw new Error(judged.why);
    expect(judged.limits.upper * 100).toBeCloseTo(EPGS.deltaUnpaired90[1], 9);
  });
});

describe('the vignette at its own thresholds', () => {
  const at = { expected: VIGNETTE.expected, lowest: VIGNETTE.lowest };
  const verdictOf = ([lower, upper]: readonly [number, number]) => verdictOfLimits({ lower, upper }, at);

  test('is reduced where animals are paired, by each method', () => {
    const { deltaPaired95, logPaired95, binomial99 } = VIGNETTE;
    expect([deltaPaired95, logPaired95, binomial99].map(verdictOf)).toEqual(Array(3).fill('resistant'));
    expect(verdictOfChances(VIGNETTE.likeliestShapes)).toBe('resistant');
  });

  test('is inconclusive where they are not', () => {
    expect([VIGNETTE.deltaUnpaired95, VIGNETTE.logUnpaired95].map(verdictOf)).toEqual(
      Array(2).fill('inconclusive'),
    );
  });
});

describe('which method judges', () => {
  test.each([
    ['four animals', rawOf([40, 60, 55, 45], [1, 2, 1, 3]), 'bnb-published-shapes'],
    ['two animals with an egg after', rawOf([20, 30, 25, 18, 22], [0, 1, 0, 0, 2]), 'bnb-own-shape'],
    ['three animals with an egg after', rawOf([20, 30, 25, 18, 22], [1, 1, 0, 0, 2]), 'delta'],
    ['no egg after', rawOf([20, 30, 25, 18, 22], [0, 0, 0, 0, 0]), 'bnb-own-shape'],
  ] as const)('%s: %s', (_name, counts, by) => {
    const judged = judgeReduction(counts, 'goat', 'clinical');
    expect(judged).toMatchObject({ ok: true, by, extremeCare: by === 'bnb-published-shapes' });
  });
});

describe('no egg after', () => {
  test('is susceptible where many were seen before', () => {
    const judged = judgeReduction(rawOf(Array(10).fill(20), Array(10).fill(0)), 'goat', 'clinical');
    expect(judged).toMatchObject({ verdict: 'susceptible', limits: { upper: 1 }, fewEggs: false });
  });

  test('proves nothing where few were', () => {
    const judged = judgeReduction(rawOf([2, 1, 3, 0, 2], Array(5).fill(0)), 'goat', 'clinical');
    expect(judged).toMatchObject({ verdict: 'inconclusive', fewEggs: true });
  });
});

describe('nearly all eggs in one animal', () => {
  const counts = rawOf([0, 0, 160, 0, 1], [0, 0, 1, 0, 0]);

  test('are judged by limits that err towards telling nothing', () => {
    const judged = judgeReduction({ ...counts, design: 'unpaired' }, 'sheep', 'clinical');
    if (!judged.ok) throw new Error(judged.why);
    expect(judged).toMatchObject({ by: 'bnb-own-shape', verdict: 'inconclusive', limits: { upper: 1 } });
    expect(judged.limits.lower).toBeLessThan(0.9);
  });
});

describe('a finer count after', () => {
  test('moves the thresholds on the scale of raw eggs', () => {
    const raw = onRawEggs({ expected: 0.99, lowest: 0.9 }, 50, 10);
    expect(raw.expected).toBeCloseTo(0.95, 12);
    expect(raw.lowest).toBeCloseTo(0.5, 12);
  });

  test('is judged in eggs per gram', () => {
    const counts = { ...rawOf([20, 30, 25, 18, 22], [1, 0, 0, 0, 1]), factorAfter: 5 };
    const judged = judgeReduction(counts, 'goat', 'clinical');
    if (!judged.ok) throw new Error(judged.why);
    expect(judged.reduction).toBeCloseTo(1 - 10 / (115 * 50), 12);
    expect(judged.limits.lower).toBeGreaterThan(0.98);
    expect(judged.verdict).toBe('susceptible');
  });
});

describe('more eggs after than before', () => {
  test('give limits below zero, kept as they are', () => {
    const judged = judgeReduction(rawOf([2, 5, 1, 4, 3], [9, 8, 12, 4, 9]), 'sheep', 'clinical');
    if (!judged.ok) throw new Error(judged.why);
    expect(judged.reduction).toBeLessThan(0);
    expect(judged.limits.lower).toBeLessThan(-1);
    expect(judged.verdict).toBe('resistant');
  });
});

describe('what is no test', () => {
  test.each([
    ['nothing-before', rawOf([0, 0, 0], [0, 0, 1])],
    ['too-few-animals', rawOf([5], [1])],
    ['not-counts', rawOf([5, 4.5], [1, 0])],
    ['not-counts', rawOf([5, 4], [1])],
    ['not-counts', rawOf([5, -4], [1, 0])],
    ['not-counts', { ...rawOf([5, 4], [1, 0]), factorAfter: 0 }],
  ] as const)('%s', (why, counts) => {
    expect(judgeReduction(counts, 'goat', 'clinical')).toEqual({ ok: false, why });
  });
});

test('any counts are judged or refused by name, and no number is lost on the way', () => {
  const eggs = fc.array(fc.tuple(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 400 })), {
    maxLength: 15,
  });
  fc.assert(
    fc.property(eggs, fc.constantFrom('goat', 'sheep', 'cattle'), (pairs, host) => {
      const judged = judgeReduction(
        rawOf(
          pairs.map(([before]) => before),
          pairs.map(([, after]) => after),
        ),
        host,
        'clinical',
      );
      if (!judged.ok) return;
      expect(Number.isFinite(judged.limits.lower)).toBe(true);
      expect(judged.limits.lower).toBeLessThanOrEqual(judged.limits.upper);
      expect(judged.limits.upper).toBeLessThanOrEqual(1);
    }),
    { numRuns: 60 },
  );
});

describe('samples become counts', () => {
  test('an animal with a sample missing is left out with both', () => {
    const made = pairedCounts([
      { before: sample(9), after: sample(1) },
      { before: sample(5), after: null },
      { before: null, after: sample(0) },
      { before: sample(0), after: sample(0) },
    ]);
    expect(made).toMatchObject({ ok: true, dropped: 2, counts: { before: [9, 0], after: [1, 0] } });
  });

  test.each([
    ['composite', [sample(5, { animals: 3 }), sample(4)], [sample(1), sample(1)]],
    ['factors-differ', [sample(5), sample(4, { factor: 15 })], [sample(1), sample(1)]],
    ['too-few-animals', [], []],
    ['nothing-before', [sample(0), sample(0)], [sample(1), sample(1)]],
  ] as const)('%s is refused', (why, before, after) => {
    expect(unpairedCounts(before, after)).toEqual({ ok: false, why });
  });
});

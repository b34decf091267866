import { expect, test } from 'vitest';
import { judgeReduction } from '../../../core/reduction/judge.ts';
import { testSize } from '../../../core/reduction/plan.ts';
import { spreadOf } from '../../../core/reduction/thresholds.ts';
import { gammaQuantile, normalQuantile } from '../../../core/statistics/quantiles.ts';
import { seeded } from '../make/animal-signal.ts';

const TESTS = 150;
/** The table was made for 0.80; of 150 tests the share still falls below this in some 1 of 1,000. */
const POWER = 0.7;

/** The distribution function of a standard normal, good to 1e-7 (Abramowitz and Stegun, 7.1.26). */
function normalBelow(z: number): number {
  const t = 1 / (1 + (0.3275911 * Math.abs(z)) / Math.SQRT2);
  const poly =
    ((((1.061405429 * t - 1.453152027) * t + 1.421413741) * t - 0.284496736) * t + 0.254829592) * t;
  const tail = (poly * Math.exp((-z * z) / 2)) / 2;
  return Math.min(1 - 1e-9, Math.max(1e-9, z < 0 ? tail : 1 - tail));
}

function poisson(expected: number, random: () => number): number {
  let [count, chance] = [0, Math.exp(-expected)];
  for (let left = random() - chance; left > 0 && count < 2000; left -= chance) {
    count += 1;
    chance *= expected / count;
  }
  return count;
}

/** The share of simulated tests that come out as one of the verdicts: paired negative binomial counts of a host. */
function shareOf(
  verdicts: readonly string[],
  host: 'sheep' | 'goat',
  animals: number,
  eggs: number,
  efficacy: number,
): number {
  const { shapeBefore, shapeAfter, correlation } = spreadOf(host);
  const random = seeded(animals * 1000 + eggs);
  const normal = (): number => normalQuantile(Math.min(1 - 1e-9, Math.max(1e-9, random())));
  let told = 0;
  for (let i = 0; i < TESTS; i += 1) {
    const pairs = Array.from({ length: animals }, () => {
      const z = normal();
      const w = correlation * z + Math.sqrt(1 - correlation ** 2) * normal();
      const before = gammaQuantile(normalBelow(z), shapeBefore, eggs / shapeBefore);
      const after = gammaQuantile(normalBelow(w), shapeAfter, (eggs * (1 - efficacy)) / shapeAfter);
      return [poisson(before, random), poisson(after, random)] as const;
    });
    const counts = {
      design: 'paired',
      before: pairs.map(([before]) => before),
      after: pairs.map(([, after]) => after),
      factorBefore: 50,
      factorAfter: 50,
    } as const;
    const judged = judgeReduction(counts, host, 'clinical');
    if (judged.ok && verdicts.includes(judged.verdict)) told += 1;
  }
  return told / TESTS;
}

test.each([
  ['sheep', 8],
  ['sheep', 15],
  ['goat', 8],
  ['goat', 40],
] as const)('a test of %s planned at %d eggs an animal tells both ways', (host, eggs) => {
  const size = testSize(host, 'clinical', eggs);
  if (size.kind !== 'sample') throw new Error(size.kind);
  const at = (efficacy: number, ...verdicts: string[]) =>
    shareOf(verdicts, host, size.animals, eggs, efficacy);
  expect(at(0.9, 'resistant', 'low-resistant')).toBeGreaterThan(POWER);
  expect(at(0.99, 'susceptible')).toBeGreaterThan(POWER);
});

test('half the animals planned for do not tell', () => {
  expect(shareOf(['susceptible'], 'sheep', 5, 8, 0.99)).toBeLessThan(0.5);
});

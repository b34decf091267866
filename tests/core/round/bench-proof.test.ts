import { describe, expect, test } from 'vitest';
import type { OnBench } from '../../../core/mixing/prove.ts';
import { grams } from '../../../core/quantity/mass.ts';
import { mgPerMl } from '../../../core/quantity/strength.ts';
import { reduceRound } from '../../../core/round/reduce.ts';
import { FRESH_ROUND, type RoundWorld } from '../../../core/round/state.ts';
import { makeJug } from '../make/jug.ts';
import { farm, play, TO_VISIT } from '../make/round.ts';

const IN_A = {
  vesselId: 'vessel-a',
  letter: 'A',
  empty: grams(300),
  contents: grams(954),
  uncertainty: grams(1.5),
};
const jug = makeJug({ weighed: IN_A });
const weaker = makeJug({
  id: 'jug-8',
  number: 8,
  strength: mgPerMl(24.727),
  weighed: { ...IN_A, letter: 'B', empty: grams(420) },
});

function onBench(mass: number): OnBench {
  return { mass: grams(mass), uncertainty: grams(0.58) };
}

function asked(over: Partial<RoundWorld>) {
  return play(FRESH_ROUND, TO_VISIT.slice(0, 1), (ms) => farm(ms, over));
}

function prove(over: Partial<RoundWorld>) {
  return reduceRound(asked(over), { type: 'prove-on-bench', jugId: 'jug-7' }, farm(5, over));
}

function press(deliberate: boolean, over: Partial<RoundWorld>) {
  return reduceRound(asked(over), { type: 'prove-jug', jugId: 'jug-7', deliberate }, farm(5, over));
}

describe('with two live strengths of one active', () => {
  const jugs = [jug, weaker];

  test('the jug that weighs what it should is proved without a held press', () => {
    expect(prove({ jugs, onBench: onBench(1254) }).round.phase.step).toBe('visit');
  });

  test('a light press is not enough, a held one is', () => {
    expect(press(false, { jugs }).refused).toBe('needs-held-press');
    expect(press(true, { jugs }).round.phase.step).toBe('visit');
  });

  test('the other strength set on the bench is refused', () => {
    expect(prove({ jugs, onBench: onBench(1374) }).refused).toBe('jug-weighs-otherwise');
  });

  test('two that weigh the same are told apart by a person only', () => {
    const twin = { ...weaker, weighed: IN_A };
    expect(prove({ jugs: [jug, twin], onBench: onBench(1254) }).refused).toBe('jugs-weigh-alike');
  });
});

describe('the bench', () => {
  test.each(['bench-not-ready', 'bench-moving', 'scale-tared'] as const)(
    'that is %s proves nothing',
    (why) => {
      expect(prove({ jugs: [jug], onBench: why }).refused).toBe(why);
    },
  );

  test('with nothing on it proves nothing', () => {
    expect(prove({ jugs: [jug], onBench: onBench(0) }).refused).toBe('no-jug-on-scale');
  });

  test('proves no jug whose empty mass was never learned', () => {
    expect(prove({ jugs: [makeJug()], onBench: onBench(1254) }).refused).toBe('jug-weight-unknown');
  });

  test('refuses a jug that someone drew from without logging it', () => {
    expect(prove({ jugs: [jug], onBench: onBench(1200) }).refused).toBe('jug-weighs-otherwise');
  });

  test('with another medicine’s jug on it makes a light press too little', () => {
    const other = { ...weaker, medicineId: 'another' };
    const over = { jugs: [jug, other], onBench: onBench(1374) };
    expect(press(false, over).refused).toBe('needs-held-press');
    expect(press(true, over).round.phase.step).toBe('visit');
  });

  test('is asked about the jug that is named, and no other', () => {
    const over = { jugs: [jug, weaker], onBench: onBench(1374) };
    const step = reduceRound(asked(over), { type: 'prove-on-bench', jugId: 'jug-8' }, farm(5, over));
    expect(step.refused).toBe('not-this-jug');
  });
});

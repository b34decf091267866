import { describe, expect, test } from 'vitest';
import { NO_CHECK, reduceScaleCheck, type ScaleCheckWorld } from '../../../core/checking/scale-check.ts';
import { type ScaleCheckStep, scaleInCheck } from '../../../core/checking/scale-check-state.ts';
import { BLANK_BENCH, feedBench } from '../../../core/weighing/bench.ts';
import { makeBench, movingBench } from '../make/bench.ts';
import { PLATFORM, readings } from '../make/reading.ts';
import {
  BOTTLE_WORK,
  checkAt,
  checkWorld,
  PLATFORM_WORK,
  playCheck,
  RIGHT_LOAD,
} from '../make/scale-check-states.ts';
import { NINE_OCLOCK } from '../make/time.ts';

const WEIGHED: readonly ScaleCheckStep[] = ['zero', 'middle', 'off', 'corner', 'both', 'down'];

function nextAt(step: ScaleCheckStep, world: ScaleCheckWorld) {
  const before = checkAt(step);
  const outcome = reduceScaleCheck(before, { type: 'next' }, world);
  if (outcome.refused !== null) expect(outcome.check).toBe(before);
  return outcome.refused;
}

describe('a step that weighs refuses', () => {
  test.each(WEIGHED)('at %s: a scale that is lost, blank, moving or tared', (step) => {
    const load = RIGHT_LOAD[step];
    const division = { unit: 'g', value: 50 } as const;
    expect(nextAt(step, checkWorld(load, { scaleReady: false }))).toBe('scale-not-ready');
    expect(nextAt(step, checkWorld(load, { scale: BLANK_BENCH }))).toBe('scale-not-ready');
    expect(nextAt(step, checkWorld(load, { scale: { ...movingBench(load), division } }))).toBe(
      'scale-moving',
    );
    expect(nextAt(step, checkWorld(load, { scale: makeBench(load, { net: true, division }) }))).toBe(
      'scale-tared',
    );
    expect(nextAt(step, checkWorld(load))).toBeNull();
  });

  test.each([
    [25, null],
    [-25, null],
    [26, 'not-at-zero'],
    [-26, 'not-at-zero'],
  ] as const)('a zero of %d g on steps of 50 g: %s', (shown, refused) => {
    expect(nextAt('zero', checkWorld(shown))).toBe(refused);
  });

  test.each(['middle', 'corner', 'both', 'down'] as const)('at %s: a scale with too little on it', (step) => {
    expect(nextAt(step, checkWorld(4999))).toBe('nothing-on-scale');
    expect(nextAt(step, checkWorld(5000))).toBeNull();
  });

  test('at off: the weight still on it, but takes a zero that did not come back', () => {
    expect(nextAt('off', checkWorld(20_000))).toBe('weight-still-on');
    expect(nextAt('off', checkWorld(400))).toBeNull();
  });

  test('at bottle: no bottle, and a full one', () => {
    expect(nextAt('bottle', checkWorld(0))).toBe('nothing-on-scale');
    expect(nextAt('bottle', checkWorld(1030))).toBe('weight-still-on');
    expect(nextAt('bottle', checkWorld(30))).toBeNull();
  });
});

describe('a weight', () => {
  const pick = (step: ScaleCheckStep, weightId: string) =>
    reduceScaleCheck(checkAt(step), { type: 'weight', weightId }, checkWorld(0)).refused;

  test('nobody knows, or of the other scale, is refused', () => {
    expect(pick('weight', 'kg-7')).toBe('no-such-weight');
    expect(pick('weight', 'g-500')).toBe('no-such-weight');
  });

  test('below twenty divisions is too light to tell anything', () => {
    expect(pick('weight', 'water-1')).toBe('weight-too-light');
    expect(pick('weight', 'kg-5')).toBeNull();
    const coarse = playCheck(PLATFORM_WORK.slice(0, 2), 500).check;
    const refused = (weightId: string) =>
      reduceScaleCheck(coarse, { type: 'weight', weightId }, checkWorld(0)).refused;
    expect(refused('kg-5')).toBe('weight-too-light');
    expect(refused('kg-10')).toBeNull();
  });

  test('that is a bottle cannot be the second one', () => {
    const fine = playCheck(PLATFORM_WORK.slice(0, 9), 20).check;
    const picked = reduceScaleCheck(fine, { type: 'weight', weightId: 'water-1' }, checkWorld(0));
    expect(picked.refused).toBe('no-such-weight');
  });
});

describe('a finished check', () => {
  test('of a platform holds every reading in its order, who and when, and stores it once', () => {
    const { check, effects } = playCheck(PLATFORM_WORK);
    if (check.step !== 'result') throw new Error(`it stands at ${check.step}`);
    expect(effects).toEqual([{ do: 'store-check', record: check.record }]);
    expect(check.record.readings.map(({ spot, shown }) => [spot, shown.value])).toEqual([
      ['zero', 0],
      ['middle', 20_000],
      ['returned', 0],
      ['front-left', 20_000],
      ['front-right', 20_000],
      ['back-right', 20_000],
      ['back-left', 20_000],
      ['both', 30_000],
      ['down', 20_000],
    ]);
    expect(check.record).toMatchObject({
      id: 'check-new',
      role: 'platform',
      by: 'Kim',
      atMs: NINE_OCLOCK,
      clockTrusted: true,
      second: { id: 'kg-10' },
      verdict: 'passed',
    });
  });

  test.each([9, 10])('with the way up and down left out after %d steps has no second weight', (steps) => {
    const { check } = playCheck([...PLATFORM_WORK.slice(0, steps), [{ type: 'skip' }, 0]]);
    expect(check).toMatchObject({ step: 'result', record: { second: null, verdict: 'passed' } });
  });

  test('of a bench has no corners', () => {
    const { check } = playCheck(
      [
        ...BOTTLE_WORK,
        [{ type: 'next' }, 30],
        [{ type: 'next' }, 1027],
        [{ type: 'next' }, 0],
        [{ type: 'skip' }, 0],
      ],
      1,
    );
    expect(check).toMatchObject({
      step: 'result',
      record: { corners: null, verdict: 'passed', rough: true },
    });
  });

  test('of a platform that does not come back to zero is failed', () => {
    const work = PLATFORM_WORK.map(([event, load], at) => [event, at === 4 ? 150 : load] as const);
    expect(playCheck(work).check).toMatchObject({ record: { verdict: 'failed' } });
  });
});

test('a scale that went away says that all begins again, and a first zero does not', () => {
  const lost = { type: 'link-lost', role: 'platform' } as const;
  const after = reduceScaleCheck(checkAt('corner'), lost, checkWorld(0)).check;
  expect(after).toMatchObject({ step: 'zero', role: 'platform', restarted: true });
  expect(reduceScaleCheck(after, lost, checkWorld(0)).check).toMatchObject({ restarted: true });
  expect(reduceScaleCheck(checkAt('zero'), lost, checkWorld(0)).check).toMatchObject({ restarted: false });
});

test('a platform serves the check and nothing else until it is finished, stopped or left', () => {
  expect(scaleInCheck(NO_CHECK)).toBeNull();
  expect(scaleInCheck(checkAt('corner'))).toBe('platform');
  expect(scaleInCheck(checkAt('bottle'))).toBe('bench');
  expect(scaleInCheck(checkAt('result'))).toBeNull();
});

test('a dead weight on the platform comes to rest by the rule of the bench', () => {
  const fed = readings(0, 1500, 10, () => 20_000).reduce(
    (bench, reading) => feedBench(bench, reading, PLATFORM),
    BLANK_BENCH,
  );
  expect(fed.steady?.value).toBe(20_000);
});

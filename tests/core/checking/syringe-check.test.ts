import { describe, expect, test } from 'vitest';
import { CHECK_LEFT_MS } from '../../../core/checking/scale-check.ts';
import {
  NO_SYRINGE_CHECK,
  reduceSyringeCheck,
  type SyringeCheckWorld,
} from '../../../core/checking/syringe-check.ts';
import type { SyringeCheck, SyringeCheckEvent } from '../../../core/checking/syringe-check-state.ts';
import { BLANK_BENCH } from '../../../core/weighing/bench.ts';
import { makeBench, movingBench } from '../make/bench.ts';
import { NINE_OCLOCK, UP } from '../make/time.ts';

const FINE = { unit: 'g', value: 0.01 } as const;
const CUP = 55;
/** 3 mL of water at 20 degC, in grams as a scale shows it. */
const ONE = 2.99;

function world(onBench: number, over: Partial<SyringeCheckWorld> = {}): SyringeCheckWorld {
  return {
    now: { uptimeMs: UP, wallMs: NINE_OCLOCK },
    clockTrusted: true,
    by: 'Kim',
    bench: makeBench(onBench, { division: FINE }),
    benchReady: true,
    freshId: 'syringe-check-new',
    ...over,
  };
}

const START = { type: 'start', syringeId: 'syringe-6-by-0.1', markMl: 3, celsius: 20 } as const;
const NEXT = { type: 'next' } as const;
const LEAVE = { type: 'leave-out' } as const;

/** Plays events, each with what stands on the bench; a refusal is a mistake of the test. */
function play(work: readonly (readonly [SyringeCheckEvent, number])[]): SyringeCheck {
  return work.reduce<SyringeCheck>((check, [event, onBench]) => {
    const outcome = reduceSyringeCheck(check, event, world(onBench));
    if (outcome.refused !== null) throw new Error(`the test's own ${event.type}: ${outcome.refused}`);
    return outcome.check;
  }, NO_SYRINGE_CHECK);
}

const delivery = (count: number) => [NEXT, CUP + count * ONE] as const;
const deliveries = (count: number) => Array.from({ length: count }, (_, i) => delivery(i + 1));
const SETUP = [[START, 0] as const, [NEXT, CUP] as const];

const AT: Readonly<Record<SyringeCheck['step'], () => SyringeCheck>> = {
  idle: () => NO_SYRINGE_CHECK,
  cup: () => play([[START, 0]]),
  deliver: () => play([...SETUP, ...deliveries(3)]),
  result: () => play([...SETUP, ...deliveries(10)]),
};
const STEPS = Object.keys(AT) as SyringeCheck['step'][];
const REFUSED = 'refused wrong-state';

describe.each([
  ['start', START, { idle: 'cup', cup: REFUSED, deliver: REFUSED, result: 'cup' }],
  ['next', NEXT, { idle: REFUSED, cup: 'deliver', deliver: 'deliver', result: 'idle' }],
  ['leave-out', LEAVE, { idle: REFUSED, cup: REFUSED, deliver: 'deliver', result: REFUSED }],
  ['cancel', { type: 'cancel' }, { idle: REFUSED, cup: 'idle', deliver: 'idle', result: 'idle' }],
  [
    'link-lost',
    { type: 'link-lost' },
    { idle: 'ignored', cup: 'ignored', deliver: 'cup', result: 'ignored' },
  ],
  ['tick', { type: 'tick' }, { idle: 'ignored', cup: 'ignored', deliver: 'ignored', result: 'ignored' }],
] as const)('%s', (_, event, row) => {
  test.each(STEPS.map((step) => [step, row[step]] as const))('at %s: %s', (step, expected) => {
    const before = AT[step]();
    const { check, effects, refused } = reduceSyringeCheck(before, event, world(CUP + 4 * ONE));
    if (refused !== null) expect(check).toBe(before);
    expect(effects).toEqual([]);
    const same = JSON.stringify(check) === JSON.stringify(before);
    expect(refused === null ? (same ? 'ignored' : check.step) : `refused ${refused}`).toBe(expected);
  });
});

describe('the start refuses', () => {
  const refusal = (over: Partial<typeof START> | { markMl: number }, at = world(0)) =>
    reduceSyringeCheck(NO_SYRINGE_CHECK, { ...START, ...over } as SyringeCheckEvent, at).refused;

  test('a syringe nobody knows', () => {
    const event = { ...START, syringeId: 'syringe-7-by-0.3' };
    expect(reduceSyringeCheck(NO_SYRINGE_CHECK, event, world(0)).refused).toBe('no-such-syringe');
  });

  test.each([0, 3.05, 6.1, -1, Number.NaN])('a mark at %d mL', (markMl) => {
    expect(refusal({ markMl })).toBe('no-such-mark');
  });

  test.each([0.9, 41, Number.NaN])('water of %d °C', (degrees) => {
    const event = { ...START, celsius: degrees };
    expect(reduceSyringeCheck(NO_SYRINGE_CHECK, event, world(0)).refused).toBe('temperature-out-of-range');
  });

  test('a scale too coarse for the volume, and takes one just fine enough', () => {
    const steps = (value: number) => world(0, { bench: makeBench(0, { division: { unit: 'g', value } }) });
    expect(refusal({}, steps(0.1))).toBe('too-coarse-for-syringe');
    expect(refusal({}, steps(0.05))).toBeNull();
  });
});

test('a scale whose step was not known at the start is refused with the cup on it', () => {
  const check = reduceSyringeCheck(NO_SYRINGE_CHECK, START, world(0, { bench: BLANK_BENCH })).check;
  const coarse = world(CUP, { bench: makeBench(CUP, { division: { unit: 'g', value: 1 } }) });
  expect(reduceSyringeCheck(check, NEXT, coarse).refused).toBe('too-coarse-for-syringe');
});

describe('a delivery', () => {
  const refusal = (at: SyringeCheckWorld, event: SyringeCheckEvent = NEXT) =>
    reduceSyringeCheck(AT.deliver(), event, at).refused;
  const so_far = CUP + 3 * ONE;

  test.each([NEXT, LEAVE])('is not read from a bench that is lost, moving or tared', (event) => {
    const onBench = so_far + ONE;
    expect(refusal(world(onBench, { benchReady: false }), event)).toBe('bench-not-ready');
    expect(refusal(world(0, { bench: BLANK_BENCH }), event)).toBe('bench-not-ready');
    expect(refusal(world(0, { bench: movingBench(onBench) }), event)).toBe('bench-moving');
    expect(refusal(world(0, { bench: makeBench(ONE, { net: true }) }), event)).toBe('tared-mid-way');
  });

  test.each([
    [0, 'nothing-delivered'],
    [-so_far, 'nothing-delivered'],
    [1.1, 'nothing-delivered'],
    [1.3, null],
    [4.7, null],
    [4.9, 'more-than-one-delivery'],
    [6, 'more-than-one-delivery'],
  ] as const)('that adds %d g where 2.99 g are expected: %s', (rise, refused) => {
    expect(refusal(world(so_far + rise))).toBe(refused);
  });

  test('left out is counted, and the next one starts from what is in the cup', () => {
    const check = play([...SETUP, ...deliveries(3), [LEAVE, so_far + 6], [NEXT, so_far + 6 + ONE]]);
    if (check.step !== 'deliver') throw new Error(check.step);
    expect(check.leftOut).toBe(1);
    expect(check.delivered.map(({ value }) => value)).toEqual([
      expect.closeTo(ONE, 9),
      expect.closeTo(ONE, 9),
      expect.closeTo(ONE, 9),
      expect.closeTo(ONE, 9),
    ]);
  });
});

test('the tenth delivery ends the check and stores it once, with every mass', () => {
  const before = play([...SETUP, ...deliveries(9)]);
  const { check, effects } = reduceSyringeCheck(before, NEXT, world(CUP + 10 * ONE));
  if (check.step !== 'result') throw new Error(check.step);
  expect(effects).toEqual([{ do: 'store-check', record: check.record }]);
  expect(check.record).toMatchObject({
    id: 'syringe-check-new',
    syringeId: 'syringe-6-by-0.1',
    leftOut: 0,
    by: 'Kim',
    atMs: NINE_OCLOCK,
    findings: { verdict: 'within' },
  });
  expect(check.record.delivered).toHaveLength(10);
});

test.each(['cup', 'deliver'] as const)('a check left alone at %s gives the bench back', (step) => {
  const now = { uptimeMs: UP + CHECK_LEFT_MS, wallMs: NINE_OCLOCK };
  expect(reduceSyringeCheck(AT[step](), { type: 'tick' }, world(0, { now })).check).toEqual(NO_SYRINGE_CHECK);
});

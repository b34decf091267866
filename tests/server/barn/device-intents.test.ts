import { expect, test } from 'vitest';
import { grams } from '../../../core/quantity/mass.ts';
import type { ScaleRole } from '../../../core/weighing/reading.ts';
import type { BarnContext } from '../../../server/barn/barn-context.ts';
import { type TestBarn, testBarn } from '../make/test-barn.ts';

/** A barn whose scales count how often they are asked for zero. */
function barnWithZero(answer: ReturnType<BarnContext['zero']> = 'sent') {
  const asked: string[] = [];
  const barn = testBarn(':memory:', undefined, {
    zero: (role) => {
      asked.push(role);
      return answer;
    },
  });
  return { barn, asked };
}

function onBench(test: TestBarn, weight: number, net = false): void {
  onScale(test, 'bench', weight, 'stable', net);
}

function onScale(
  test: TestBarn,
  role: ScaleRole,
  weight: number,
  stability: 'stable' | 'moving',
  net = false,
): void {
  test.barn.read({
    role,
    mass: grams(weight),
    division: grams(1),
    stability,
    net,
    zero: false,
    at: test.clock.uptimeMs,
  });
}

const ZERO = { type: 'zero', role: 'platform' } as const;

test('a platform that does not quite stand at zero is asked for it, once for one press', () => {
  const { barn, asked } = barnWithZero();
  barn.weigh(750, 1000);
  expect(barn.send({ ...ZERO, id: 'one' }).ok).toBe(true);
  expect(barn.send({ ...ZERO, id: 'one' })).toMatchObject({ ok: true, repeated: true });
  expect(asked).toEqual(['platform']);
});

test('a platform that hangs below zero may be asked too', () => {
  const { barn, asked } = barnWithZero();
  barn.weigh(-3000, 1000);
  expect(barn.send(ZERO).ok).toBe(true);
  expect(asked).toEqual(['platform']);
});

test.each([
  ['an animal that stepped on from zero', 15_400],
  ['a kid that stepped on from zero', 900],
])('%s is never zeroed away', (_what, weight) => {
  const { barn, asked } = barnWithZero();
  barn.weigh(0, 1000);
  barn.weigh(weight, 1000);
  expect(barn.send(ZERO)).toMatchObject({ ok: false, code: 'something-on-scale' });
  expect(asked).toEqual([]);
});

test('what stood there before the scale came up is not zeroed away either', () => {
  const { barn, asked } = barnWithZero();
  barn.weigh(15_400, 1000);
  expect(barn.send(ZERO)).toMatchObject({ code: 'something-on-scale' });
  expect(asked).toEqual([]);
});

test.each(['platform', 'bench'] as const)('a %s that still moves is not asked until it is still', (role) => {
  const { barn, asked } = barnWithZero();
  onScale(barn, role, 3, 'moving');
  expect(barn.send({ type: 'zero', role })).toMatchObject({ ok: false, code: 'scale-moving' });
  onScale(barn, role, 3, 'stable');
  expect(barn.send({ type: 'zero', role }).ok).toBe(true);
  expect(asked).toEqual([role]);
});

test('without a ready link or a current value nothing is sent', () => {
  const { barn, asked } = barnWithZero();
  expect(barn.send(ZERO)).toMatchObject({ code: 'scale-not-ready' });
  barn.weigh(200, 500);
  barn.links.platform = 'silent';
  expect(barn.send(ZERO)).toMatchObject({ code: 'scale-not-ready' });
  expect(asked).toEqual([]);
});

test.each([
  ['no-command', 'no-zero-command'],
  ['not-ready', 'scale-not-ready'],
] as const)('a scale that answers %s is refused as %s', (answer, code) => {
  const { barn } = barnWithZero(answer);
  barn.weigh(100, 500);
  expect(barn.send(ZERO)).toMatchObject({ ok: false, code });
});

test('the bench is zeroed empty, in gross and between two mixes only', () => {
  const { barn, asked } = barnWithZero();
  const zero = { type: 'zero', role: 'bench' } as const;
  onBench(barn, 312);
  expect(barn.send(zero)).toMatchObject({ code: 'something-on-scale' });
  onBench(barn, 3, true);
  expect(barn.send(zero)).toMatchObject({ code: 'scale-tared' });
  onBench(barn, 3);
  barn.send({ type: 'mix-start', packetId: 'levamisole-52g' });
  expect(barn.send(zero)).toMatchObject({ code: 'bench-in-use' });
  barn.send({ type: 'mix-cancel' });
  expect(barn.send(zero).ok).toBe(true);
  expect(asked).toEqual(['bench']);
});

test.each(['not-in-demo', 'set-by-environment'] as const)(
  'where set-up is %s every intent of it says so',
  (why) => {
    const barn = testBarn(':memory:', undefined, { setup: why });
    const intents = [
      { type: 'ports-look' },
      { type: 'device-listen', role: 'platform', path: '/dev/one' },
      { type: 'device-try', role: 'platform', index: 0 },
      { type: 'device-prove', loadId: 'kg-1' },
      { type: 'device-no-tare' },
      { type: 'device-keep' },
      { type: 'device-drop' },
      { type: 'device-remove', role: 'platform' },
    ] as const;
    for (const intent of intents) expect(barn.send(intent)).toMatchObject({ ok: false, code: why });
  },
);

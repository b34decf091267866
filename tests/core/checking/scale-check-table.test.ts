import { describe, expect, test } from 'vitest';
import { CHECK_LEFT_MS, reduceScaleCheck } from '../../../core/checking/scale-check.ts';
import type { ScaleCheckEvent, ScaleCheckStep } from '../../../core/checking/scale-check-state.ts';
import { checkAt, checkWorld, RIGHT_LOAD } from '../make/scale-check-states.ts';
import { NINE_OCLOCK, UP } from '../make/time.ts';

type Row = Readonly<Record<ScaleCheckStep, string>>;

const STEPS: readonly ScaleCheckStep[] = [
  'idle',
  'zero',
  'weight',
  'bottle',
  'middle',
  'off',
  'corner',
  'second',
  'both',
  'down',
  'result',
];

function everywhere(usual: string, but: Partial<Row> = {}): Row {
  return { ...(Object.fromEntries(STEPS.map((step) => [step, usual])) as Row), ...but };
}

/** Every event, and what it comes to at every step with the right thing on the scale. */
const TABLE: readonly (readonly [string, ScaleCheckEvent, Row])[] = [
  [
    'start',
    { type: 'start', role: 'platform' },
    everywhere('refused wrong-state', { idle: 'zero', result: 'zero' }),
  ],
  [
    'weight',
    { type: 'weight', weightId: 'kg-20' },
    everywhere('refused wrong-state', { weight: 'middle', second: 'both' }),
  ],
  [
    'next',
    { type: 'next' },
    {
      idle: 'refused wrong-state',
      zero: 'weight',
      weight: 'refused wrong-state',
      bottle: 'middle',
      middle: 'off',
      off: 'corner front-left',
      corner: 'corner front-right',
      second: 'refused wrong-state',
      both: 'down',
      down: 'result + store check-new',
      result: 'idle',
    },
  ],
  [
    'skip',
    { type: 'skip' },
    everywhere('refused wrong-state', {
      second: 'result + store check-new',
      both: 'result + store check-new',
    }),
  ],
  ['cancel', { type: 'cancel' }, everywhere('idle', { idle: 'refused wrong-state' })],
  [
    'the link of the platform goes',
    { type: 'link-lost', role: 'platform' },
    everywhere('zero', { idle: 'ignored', bottle: 'ignored', result: 'ignored', zero: 'ignored' }),
  ],
  [
    'the link of the bench goes',
    { type: 'link-lost', role: 'bench' },
    everywhere('ignored', { bottle: 'zero' }),
  ],
  ['tick', { type: 'tick' }, everywhere('ignored')],
];

describe.each(TABLE)('%s', (_, event, row) => {
  test.each(STEPS.map((step) => [step, row[step]] as const))('at %s: %s', (step, expected) => {
    const before = checkAt(step);
    const { check, effects, refused } = reduceScaleCheck(before, event, checkWorld(RIGHT_LOAD[step]));
    const same = JSON.stringify(check) === JSON.stringify(before);
    if (refused !== null) expect(check).toBe(before);
    const corner = check.step === 'corner' ? ` ${check.corner}` : '';
    const first = refused === null ? (same ? 'ignored' : `${check.step}${corner}`) : `refused ${refused}`;
    expect([first, ...effects.map(({ record }) => `store ${record.id}`)].join(' + ')).toBe(expected);
  });
});

test.each(STEPS)('a check left alone at %s gives the scale back, and a finished one stays', (step) => {
  const now = { uptimeMs: UP + CHECK_LEFT_MS, wallMs: NINE_OCLOCK + CHECK_LEFT_MS };
  const { check, effects } = reduceScaleCheck(checkAt(step), { type: 'tick' }, checkWorld(0, { now }));
  expect(check.step).toBe(step === 'result' ? 'result' : 'idle');
  expect(effects).toEqual([]);
  const early = { ...now, uptimeMs: now.uptimeMs - 1 };
  const still = reduceScaleCheck(checkAt(step), { type: 'tick' }, checkWorld(0, { now: early }));
  expect(still.check.step).toBe(step);
});

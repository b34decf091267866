import { KNOWN_WEIGHTS } from '../../../core/checking/known-weight.ts';
import type { CheckView } from '../../../shared/check.ts';
import type { KioskState } from '../../../shared/state.ts';
import type { SyringeCheckView } from '../../../shared/syringe-check.ts';
import { BASE } from './base-state.ts';
import { FAILED_CHECK, PLATFORM_CHECK, SYRINGE_CHECK, TEN, TWENTY } from './check-state.ts';
import type { Scene } from './scene.ts';

function checking(name: string, check: CheckView, more: Partial<KioskState> = {}): Scene {
  return { name: `check-${name}`, place: 'shed/check', state: { ...BASE, check, ...more } };
}

function measuring(name: string, syringeCheck: SyringeCheckView, more: Partial<KioskState> = {}): Scene {
  const state = { ...BASE, bench: FINE_BENCH, syringeCheck, ...more };
  return { name: `syringe-check-${name}`, place: 'shed/syringe-check', state };
}

const FINE_BENCH: KioskState['bench'] = { link: 'ready', live: 0, steady: true, division: 0.01 };
const platform = { role: 'platform', steady: true } as const;
const on20 = { ...platform, liveGrams: 20_000, weight: TWENTY };
const choices = (role: 'platform' | 'bench', bottle: boolean, tooLight: readonly string[] = []) =>
  KNOWN_WEIGHTS[role]
    .filter(({ unit }) => bottle || unit !== 'L')
    .map(({ id, amount, unit }) => ({ id, amount, unit, tooLight: tooLight.includes(id) }));
const WATER = { id: 'water-1', amount: 1, unit: 'L' } as const;
const bench = { role: 'bench', steady: true, weight: WATER } as const;
const task = { syringeId: 'syringe-6-by-0.1', markMl: 3, celsius: 20 };
const failed: KioskState = {
  ...BASE,
  shed: {
    ...BASE.shed,
    checks: { ...BASE.shed.checks, platform: { last: FAILED_CHECK, standing: 'failed' } },
  },
};

/** Every step of the two checks. */
export const CHECK_SCENES: readonly Scene[] = [
  { name: 'check-which', place: 'shed/check', state: BASE },
  { name: 'check-which-failed', place: 'shed/check', state: failed },
  { name: 'check-last', place: 'shed/check/platform', state: BASE },
  { name: 'check-rule', place: 'shed/check/rule', state: BASE },
  { name: 'check-shed-failed', place: 'shed', state: failed },
  checking('zero', { step: 'zero', ...platform, liveGrams: 0, restarted: false }),
  checking('zero-restarted', { step: 'zero', ...platform, liveGrams: 150, restarted: true }),
  checking(
    'zero-lost',
    { step: 'zero', role: 'platform', steady: false, liveGrams: null, restarted: true },
    { platform: { ...BASE.platform, link: 'lost', live: null, verdict: 'blank' } },
  ),
  checking('weight', { step: 'weight', role: 'platform', choices: choices('platform', true, ['water-1']) }),
  checking('weight-bench', { step: 'weight', role: 'bench', choices: choices('bench', true) }),
  checking('bottle', { step: 'bottle', ...bench, liveGrams: 32 }),
  checking('bottle-full', { step: 'middle', ...bench, liveGrams: 1029 }),
  checking('middle', { step: 'middle', ...on20, liveGrams: 20_000 }),
  checking('moving', { step: 'middle', ...on20, liveGrams: 17_350, steady: false }),
  checking('off', { step: 'off', ...on20, liveGrams: 20_000 }),
  checking('corner', { step: 'corner', ...on20, corner: 'front-left' }),
  checking('corner-back', { step: 'corner', ...on20, corner: 'back-right' }, { weightUnit: 'kg' }),
  checking('second', { step: 'second', role: 'platform', choices: choices('platform', false) }),
  checking('both', { step: 'both', ...on20, liveGrams: 30_050, second: TEN }),
  checking('down', { step: 'down', ...on20, second: TEN }),
  checking('result-passed', { step: 'result', record: PLATFORM_CHECK }),
  checking('result-failed', { step: 'result', record: FAILED_CHECK }),
  checking('result-bench', {
    step: 'result',
    record: {
      ...PLATFORM_CHECK,
      role: 'bench',
      divisionGrams: 1,
      weight: WATER,
      second: null,
      points: [
        { spot: 'middle', knownGrams: 1029.2, shownGrams: 1033, error: 3.8, limit: 17, within: true },
        { spot: 'returned', knownGrams: 0, shownGrams: 0, error: 0, limit: 1, within: true },
      ],
      corners: null,
      rough: true,
    },
  }),
  {
    name: 'check-platform-busy',
    place: 'platform',
    state: {
      ...BASE,
      platform: { ...BASE.platform, live: null, verdict: 'blank' },
      check: { step: 'corner', ...on20, corner: 'front-left' },
      round: {
        step: 'visit',
        jugId: 'j7',
        animal: null,
        weight: null,
        onDeck: false,
        likely: [],
        unanswered: [],
      },
    },
  },
  { name: 'syringe-check-which', place: 'shed/syringe-check', state: BASE },
  {
    name: 'syringe-check-which-none',
    place: 'shed/syringe-check',
    state: { ...BASE, shed: { ...BASE.shed, syringes: [] } },
  },
  {
    name: 'syringe-check-mark',
    place: 'shed/syringe-check/syringe-12-by-0.2/marks',
    state: { ...BASE, bench: FINE_BENCH },
  },
  {
    name: 'syringe-check-mark-coarse',
    place: 'shed/syringe-check/syringe-12-by-0.2/marks',
    state: { ...BASE, bench: { ...FINE_BENCH, division: 0.2 } },
  },
  {
    name: 'syringe-check-water',
    place: 'shed/syringe-check/syringe-12-by-0.2/marks/6',
    state: { ...BASE, bench: FINE_BENCH },
  },
  { name: 'syringe-check-last', place: 'shed/syringe-check/syringe-6-by-0.1', state: BASE },
  measuring('cup', { step: 'cup', ...task, liveGrams: 54.31, steady: true }),
  measuring('deliver', {
    step: 'deliver',
    ...task,
    done: 3,
    of: 10,
    leftOut: 1,
    riseGrams: 2.91,
    steady: true,
  }),
  measuring('deliver-moving', {
    step: 'deliver',
    ...task,
    done: 9,
    of: 10,
    leftOut: 0,
    riseGrams: 1.4,
    steady: false,
  }),
  measuring(
    'deliver-silent',
    { step: 'deliver', ...task, done: 4, of: 10, leftOut: 0, riseGrams: null, steady: false },
    { bench: { link: 'silent', live: null, steady: false, division: 0.01 } },
  ),
  measuring('result', { step: 'result', record: SYRINGE_CHECK }),
  measuring('result-outside', {
    step: 'result',
    record: { ...SYRINGE_CHECK, biasMl: 0.31, verdict: 'outside', leftOut: 0 },
  }),
  measuring('result-unclear', {
    step: 'result',
    record: { ...SYRINGE_CHECK, biasMl: 0.11, verdict: 'unclear', leftOut: 0 },
  }),
];

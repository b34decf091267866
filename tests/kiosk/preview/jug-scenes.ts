import type { JugView } from '../../../shared/jug.ts';
import type { DilutionView, MixingView, PourView } from '../../../shared/mixing.ts';
import type { KioskState } from '../../../shared/state.ts';
import { BASE, JUG, PLAN, RIVAL } from './base-state.ts';
import type { Scene } from './scene.ts';

function at(changes: Partial<KioskState>): KioskState {
  return { ...BASE, ...changes };
}

const vessels = [
  { id: 'v1', letter: 'A', emptyGrams: 312 },
  { id: 'v2', letter: 'B', emptyGrams: 348 },
];
const bench = (live: number | null, steady: boolean): KioskState['bench'] => ({
  link: 'ready',
  live,
  steady,
  division: 1,
});

function pour(
  nowGrams: number | null,
  advice: PourView['advice'],
  steady = false,
  farStrengthMgPerMl: number | null = null,
): KioskState {
  return at({
    bench: bench(nowGrams === null ? null : nowGrams + 312, steady),
    jug: {
      step: 'pour',
      plan: PLAN,
      letter: 'A',
      pour: { advice, nowGrams, targetGrams: 903.5, bandGrams: 10.8, steady, farStrengthMgPerMl },
    },
  });
}

type Powder = Extract<MixingView, { step: 'powder' }>;

function powder(
  verdict: Powder['verdict'],
  riseGrams: number | null,
  over: Partial<Powder> = {},
): KioskState {
  return at({
    jug: {
      step: 'powder',
      plan: PLAN,
      riseGrams,
      verdict,
      strengthMgPerMl: 49.52,
      farOff: false,
      ...over,
    },
  });
}

const HALF_PLAN = {
  ...PLAN,
  amount: { kind: 'weighed', share: 0.5 } as const,
  namedVolumeMl: 473.176,
  finalVolumeMl: 473.176,
  waterGrams: 451.8,
  powderGrams: 26,
};

const QUART: DilutionView = {
  perPacketMl: 946.353,
  namedMl: 946.353,
  jugMl: 946.353,
  strengthMgPerMl: 49.45,
  origin: 'printed',
  source: 'One packet, one US quart',
  animals: 12,
  guessed: 1,
  measurable: 12,
  crossing: 0,
  worst: 0.138,
  draws: 1.1,
  neededMl: 84,
  jugs: 1,
  reason: 'interval',
};
const CHOICES: readonly DilutionView[] = [
  {
    ...QUART,
    perPacketMl: 1892.706,
    namedMl: 1892.706,
    jugMl: 1892.706,
    strengthMgPerMl: 24.73,
    worst: 0.094,
    draws: 1.4,
    neededMl: 168,
  },
  QUART,
  {
    ...QUART,
    perPacketMl: 1048,
    namedMl: 1048,
    jugMl: 1048,
    strengthMgPerMl: 44.66,
    worst: 0.131,
    neededMl: 93,
  },
  {
    ...QUART,
    perPacketMl: 3785.412,
    namedMl: 3785.412,
    jugMl: 3785.412,
    strengthMgPerMl: 12.36,
    origin: 'sums',
    measurable: 9,
    worst: 0.081,
    draws: 1.9,
    neededMl: 336,
    reason: 'measurable',
  },
  {
    ...QUART,
    perPacketMl: 473.176,
    namedMl: 473.176,
    jugMl: 473.176,
    strengthMgPerMl: 98.91,
    origin: 'sums',
    crossing: 2,
    worst: 0.211,
    draws: 1,
    neededMl: 42,
    reason: 'ceiling',
  },
];
const dilution = (over: Partial<Extract<MixingView, { step: 'dilution' }>> = {}): KioskState =>
  at({
    jug: {
      step: 'dilution',
      own: null,
      packetId: 'levamisole-52g',
      medicine: 'Levamisole',
      amount: { kind: 'packets', count: 1 },
      mode: 'make-up-to',
      choices: [...CHOICES],
      ...over,
    },
  });

const newJug = (live: number, doubt: Extract<MixingView, { step: 'new-jug' }>['doubt']): KioskState =>
  at({
    bench: bench(live, true),
    jug: {
      step: 'new-jug',
      plan: PLAN,
      nowGrams: live,
      steady: true,
      doubt,
      letter: doubt.kind === 'first' ? 'A' : 'C',
      vessels: doubt.kind === 'first' ? [] : vessels,
    },
  });

const place = (nowGrams: number, standsLike: string | null, known = vessels): KioskState =>
  at({
    bench: bench(nowGrams, true),
    jug: { step: 'place', plan: PLAN, nowGrams, steady: true, vessels: known, standsLike },
  });

const mixed = {
  ...JUG,
  number: 9,
  mixedAt: '2026-04-14T14:03:00Z',
  useBy: '2026-04-15T02:03:00Z',
  remainingMl: 946,
};
const A = { id: 'v1', letter: 'A', emptyGrams: 312 };

const label = (storage: JugView['storage'], refrigerate: boolean): KioskState =>
  at({
    jug: {
      step: 'label',
      jug: { ...mixed, storage, refrigerate },
      handling: [
        'Wear gloves',
        'Do not breathe the powder',
        'Keep from children and other stock',
        'Wash off splashes: rarely it harms people’s blood',
      ],
    },
  });

/** The mixing of a jug, step by step, and what may go wrong at each. */
export const JUG_SCENES: readonly Scene[] = [
  { name: 'jug-idle', place: 'jug', state: at({ jugs: [JUG, RIVAL] }) },
  { name: 'jug-kept', place: 'jug/j7', state: at({}) },
  { name: 'jug-kept-why', place: 'jug/j7', state: at({}), taps: ['why-use-by-door'] },
  { name: 'jug-dilution', place: 'jug', state: dilution() },
  { name: 'jug-dilution-second', place: 'jug', state: dilution(), taps: ['dilution-next'] },
  {
    name: 'jug-dilution-no-herd',
    place: 'jug',
    state: dilution({
      choices: CHOICES.map((choice) => ({
        ...choice,
        animals: 0,
        guessed: 0,
        measurable: 0,
        crossing: 0,
        worst: null,
        reason: 'own' as const,
      })),
    }),
  },
  {
    name: 'jug-own-keypad',
    place: 'jug',
    state: dilution(),
    taps: ['mix-own', 'key-1', 'key-5', 'key-0', 'key-0'],
  },
  {
    name: 'jug-own',
    place: 'jug',
    state: dilution({
      own: {
        choice: {
          ...CHOICES[0],
          perPacketMl: 2800,
          namedMl: 2800,
          jugMl: 2800,
          strengthMgPerMl: 16.71,
          draws: 3,
          reason: 'draws',
        } as DilutionView,
        far: true,
      },
    }),
    taps: ['mix-own', 'key-2', 'key-8', 'key-0', 'key-0', 'key-done'],
  },
  { name: 'jug-amount', place: 'jug', state: dilution(), taps: ['mix-amount'] },
  { name: 'jug-mode', place: 'jug', state: dilution(), taps: ['mix-mode'] },
  { name: 'jug-water', place: 'jug', state: at({ jug: { step: 'water', packetId: 'levamisole-52g' } }) },
  { name: 'jug-place', place: 'jug', state: place(0, null) },
  { name: 'jug-place-first', place: 'jug', state: place(312, null, []) },
  { name: 'jug-place-known', place: 'jug', state: place(312, 'A') },
  { name: 'jug-new', place: 'jug', state: newJug(312, { kind: 'first' }) },
  { name: 'jug-new-heavier', place: 'jug', state: newJug(941, { kind: 'heavier', than: A, byGrams: 629 }) },
  { name: 'jug-new-lighter', place: 'jug', state: newJug(120, { kind: 'lighter', than: A, byGrams: 192 }) },
  { name: 'jug-new-holds-mix', place: 'jug', state: newJug(929, { kind: 'holds-mix', number: 7 }) },
  { name: 'jug-pour-early', place: 'jug', state: pour(212, 'pour') },
  { name: 'jug-pour-why', place: 'jug', state: pour(842, 'slow'), taps: ['why-target'] },
  { name: 'jug-pour-slow', place: 'jug', state: pour(842, 'slow') },
  { name: 'jug-pour-stop', place: 'jug', state: pour(902, 'stop', true) },
  { name: 'jug-pour-over', place: 'jug', state: pour(961, 'over', true) },
  { name: 'jug-pour-far-over', place: 'jug', state: pour(3740, 'over', true, 12.4) },
  { name: 'jug-pour-lifted', place: 'jug', state: pour(-312, 'jug-lifted') },
  { name: 'jug-pour-moved', place: 'jug', state: pour(-180, 'scale-moved') },
  { name: 'jug-pour-tared', place: 'jug', state: pour(null, 'scale-tared') },
  {
    name: 'jug-pour-lost',
    place: 'jug',
    state: at({
      ...pour(null, 'pour'),
      bench: { link: 'silent', live: null, steady: false, division: 1 },
    }),
  },
  { name: 'jug-powder', place: 'jug', state: powder('part', 26) },
  {
    name: 'jug-powder-three',
    place: 'jug',
    state: powder('part', 104, {
      plan: { ...PLAN, amount: { kind: 'packets', count: 3 }, powderGrams: 156 },
    }),
  },
  { name: 'jug-powder-weighed', place: 'jug', state: powder('whole', 26, { plan: HALF_PLAN }) },
  {
    name: 'jug-powder-weighed-far',
    place: 'jug',
    state: powder('too-much', 34, { plan: HALF_PLAN, farOff: true }),
  },
  { name: 'jug-powder-lifted', place: 'jug', state: powder('jug-lifted', -1045) },
  { name: 'jug-powder-changed', place: 'jug', state: powder('jug-changed', -210) },
  { name: 'jug-powder-too-much', place: 'jug', state: powder('too-much', 104) },
  {
    name: 'jug-dissolve',
    place: 'jug',
    state: at({ jug: { step: 'dissolve', plan: PLAN, strengthMgPerMl: 49.52 } }),
  },
  { name: 'jug-label', place: 'jug', state: label([], false) },
  {
    name: 'jug-label-cold',
    place: 'jug',
    state: label([{ keep: 'other', text: 'Use within 2 days' }], true),
  },
];

import type { EggCountsView, EggCountView } from '../../../shared/egg-count.ts';
import type { PlanView, TestPage, TestRowView, TestsView } from '../../../shared/reduction-test.ts';
import type { KioskState } from '../../../shared/state.ts';
import { BASE, HERD, JUG, RIVAL } from './base-state.ts';
import type { Scene } from './scene.ts';

const SLIDE = { kind: 'slide', dungGrams: 4, suspensionMl: 60, countedMl: 0.3 } as const;

function count(id: string, at: number, eggs: number, extra: Partial<EggCountView> = {}): EggCountView {
  const animal = HERD[at];
  return {
    id,
    animals: [{ id: animal?.id ?? '', name: animal?.name ?? '' }],
    eggs,
    method: SLIDE,
    factor: 50,
    eggsPerGram: eggs * 50,
    low: eggs * 26,
    high: eggs * 87 + 184,
    purpose: 'herd',
    test: null,
    takenAt: '2026-04-13T12:00:00Z',
    loggedAt: `2026-04-14T14:03:${20 + at}Z`,
    by: 'Sam',
    takenBack: false,
    corrections: [],
    ...extra,
  };
}

const mixed = HERD.slice(1, 5).map(({ id, name }) => ({ id, name }));
const eggs: EggCountsView = {
  mean: {
    eggsPerGram: 420,
    low: 351,
    high: 498,
    animals: 11,
    from: '2026-04-12T12:00:00Z',
    to: '2026-04-13T12:00:00Z',
  },
  counts: [
    count('c1', 0, 12),
    count('c2', 2, 3),
    count('c3', 1, 8, { animals: mixed }),
    count('c4', 3, 121, { takenBack: true }),
    count('c5', 5, 21, {
      corrections: [{ kind: 'other-number', eggs: 21, at: '2026-04-14T09:00:00Z', by: 'Kim' }],
    }),
  ],
};

const row: TestRowView = {
  id: 't1',
  medicine: 'Levamisole',
  active: 'levamisole hydrochloride',
  species: 'goat',
  design: 'paired',
  step: 'done',
  treatedAt: '2026-03-30T10:00:00Z',
  dueFrom: '2026-04-06T10:00:00Z',
  dueBest: '2026-04-09T10:00:00Z',
  dueUntil: '2026-04-13T10:00:00Z',
  missing: { before: 0, after: 0 },
  verdict: 'resistant',
  reduction: 0.923077,
};
const tests: TestsView = {
  tests: [
    {
      ...row,
      id: 't2',
      medicine: 'Moxidectin',
      step: 'due',
      verdict: null,
      reduction: null,
      missing: { before: 0, after: 8 },
    },
    {
      ...row,
      id: 't3',
      medicine: 'Fenbendazole',
      step: 'before',
      verdict: null,
      reduction: null,
      missing: { before: 3, after: 0 },
    },
    row,
    { ...row, id: 't4', medicine: 'Ivermectin', verdict: 'susceptible', reduction: 0.998 },
  ],
  together: [
    {
      species: 'goat',
      parts: [
        { testId: 't1', medicine: 'Levamisole', efficacy: 0.8 },
        { testId: 't4', medicine: 'Ivermectin', efficacy: 0.7 },
        { testId: 't5', medicine: 'Fenbendazole', efficacy: 0.6 },
      ],
      together: 0.976,
      leftOfThousand: [200, 60, 24],
    },
  ],
  canPlan: true,
};

/** The published fourteen, with names of an invented herd. */
const page: TestPage = {
  ...row,
  protocol: 'clinical',
  method: SLIDE,
  window: { fromDay: 7, untilDay: 14, evidence: 'published', source: 'a university extension page' },
  plannedAt: '2026-03-30T11:00:00Z',
  by: 'Sam',
  animals: HERD.slice(0, 8).map(({ id, name }, at) => ({
    id,
    name,
    treated: at < 7,
    before: 20 + at,
    after: at,
  })),
  result: {
    ok: true,
    verdict: 'resistant',
    by: 'delta',
    reduction: 0.923076923,
    limits: { lower: 0.885750023, upper: 0.953962337 },
    chances: null,
    thresholds: { expected: 0.99, lowest: 0.9 },
    animals: { before: 14, after: 14 },
    eggs: { before: 377, after: 29 },
    means: { before: { value: 1346, low: 1214, high: 1489 }, after: { value: 104, low: 69, high: 149 } },
    extremeCare: false,
    fewEggs: false,
    band: 'resistant',
  },
  dropped: 1,
  untreatedFell: 0.12,
  controlled: 0.913,
  confounders: [
    { confounder: 'dose-short', doses: 2 },
    { confounder: 'syringe-unchecked', doses: 14 },
    { confounder: 'sampled-late', doses: 3 },
    { confounder: 'genera-not-told', doses: 0 },
  ],
  ended: null,
};
const result = page.result?.ok === true ? page.result : null;
const worse: TestPage = {
  ...page,
  result: result && {
    ...result,
    by: 'bnb-published-shapes',
    verdict: 'inconclusive',
    reduction: -0.566,
    limits: { lower: -1.156, upper: 0.912 },
    chances: { resistance: 0.31, susceptibility: 0.4 },
    animals: { before: 4, after: 4 },
    extremeCare: true,
    means: { before: { value: 210, low: 120, high: 340 }, after: { value: 329, low: 210, high: 490 } },
  },
};
const good: TestPage = {
  ...page,
  result: result && {
    ...result,
    verdict: 'susceptible',
    reduction: 1,
    limits: { lower: 0.957, upper: 1 },
    eggs: { before: 210, after: 0 },
    means: { before: { value: 1050, low: 910, high: 1200 }, after: { value: 0, low: 0, high: 9 } },
  },
  confounders: [],
};
const running: TestPage = {
  ...page,
  step: 'due',
  animals: page.animals.map((animal, at) => ({ ...animal, after: at < 3 ? at : null })),
  missing: { before: 0, after: 5 },
  verdict: null,
  reduction: null,
  result: null,
};
const begun: TestPage = {
  ...running,
  step: 'before',
  animals: page.animals.map((animal, at) => ({ ...animal, before: at < 3 ? 20 + at : null, after: null })),
  missing: { before: 5, after: 3 },
  window: { ...page.window, evidence: 'from-memory' },
};

const plan: PlanView = {
  rounds: [
    {
      medicineId: 'levamisole',
      medicine: 'Levamisole',
      species: 'goat',
      treated: HERD.filter(({ species }) => species === 'goat').map(({ id, name }, at) => ({
        id,
        name,
        lastEggsPerGram: at < 2 ? 900 - 100 * at : null,
      })),
      leftOut: 1,
      untreated: HERD.slice(5, 7).map(({ id, name }) => ({ id, name })),
      expectedEggsPerGram: 850,
      window: { fromDay: 7, untilDay: 14, evidence: 'published' },
    },
  ],
};
const finer: PlanView = {
  rounds: plan.rounds.map((round) => ({ ...round, expectedEggsPerGram: 150 })),
};
const two: PlanView = {
  rounds: [...plan.rounds, ...plan.rounds.map((round) => ({ ...round, species: 'sheep' as const }))],
};

const http = {
  '/api/egg-counts': eggs,
  '/api/reduction-tests': tests,
  '/api/reduction-tests/t1': page,
  '/api/reduction-tests/t2': running,
  '/api/reduction-tests/t3': begun,
  '/api/reduction-tests/t5': worse,
  '/api/reduction-tests/t6': good,
  '/api/reduction-plan': plan,
};
const wormCheck: KioskState['wormCheck'] = {
  revision: 3,
  open: 2,
  due: 2,
  failed: [
    {
      testId: 't1',
      active: 'levamisole hydrochloride',
      species: 'goat',
      verdict: 'resistant',
      reduction: 0.923,
      at: '2026-04-13T10:00:00Z',
    },
  ],
};
const state: KioskState = { ...BASE, wormCheck };
const scene = (name: string, place: string, extra: Partial<Scene> = {}): Scene => ({
  name,
  place: `worm-check/${place}`,
  state,
  http,
  ...extra,
});
const noEggs = { ...http, '/api/egg-counts': { mean: null, counts: [] } };
const METHOD_TAPS = ['method'];

/** Egg counts, and whether a medicine worked. */
export const WORM_SCENES: readonly Scene[] = [
  scene('worm-doors-due', ''),
  { name: 'home-test-due', place: 'home', state },
  { name: 'failed-jug', place: 'platform', state: { ...state, jugs: [JUG, RIVAL] } },
  { name: 'failed-packet', place: 'jug', state },
  { name: 'failed-rules', place: 'shed/rules', state },
  { name: 'failed-rule', place: 'shed/rules/levamisole-goat', state },
  {
    name: 'failed-caution',
    place: 'platform',
    state: {
      ...state,
      round: {
        step: 'cautions',
        jugId: 'j7',
        animal: 'a1',
        weight: { grams: 24_400, uncertaintyGrams: 60, at: '2026-04-14T14:02:00Z' },
        onDeck: true,
        cautions: [
          {
            code: 'test-resistant',
            strength: 'ask',
            values: { reduction: 0.923, testedAtMs: Date.UTC(2026, 3, 13, 10) },
          },
        ],
        accepted: [],
        unanswered: [],
      },
    },
  },
  scene('eggs', 'eggs'),
  scene('eggs-none', 'eggs', { http: noEggs }),
  scene('eggs-one', 'eggs/c5'),
  scene('eggs-taken-back', 'eggs/c4'),
  scene('eggs-number', 'eggs/c1/number'),
  scene('eggs-method', 'eggs/count', { http: noEggs }),
  scene('eggs-slide', 'eggs/count', { http: noEggs, taps: ['method-slide'] }),
  scene('eggs-set-up', 'eggs/count'),
  scene('eggs-why', 'eggs/count/why'),
  scene('eggs-day', 'eggs/count/day'),
  scene('eggs-other-day', 'eggs/count/day', { taps: ['choose-other'] }),
  scene('eggs-whose', 'eggs/count/whose'),
  scene('eggs-mixed', 'eggs/count/whose', { taps: ['mixed', 'sample-tile'] }),
  scene('eggs-seen', 'eggs/count/a1'),
  scene('tests', 'tests'),
  scene('tests-none', 'tests', {
    http: { ...http, '/api/reduction-tests': { tests: [], together: [], canPlan: false } },
  }),
  scene('tests-together', 'tests/together'),
  scene('test-plan-which', 'tests/new', { http: { ...http, '/api/reduction-plan': two } }),
  scene('test-plan-none', 'tests/new', { http: { ...http, '/api/reduction-plan': { rounds: [] } } }),
  scene('test-plan-design', 'tests/new', { taps: METHOD_TAPS }),
  scene('test-plan-who', 'tests/new', { taps: [...METHOD_TAPS, 'design-paired'] }),
  scene('test-plan-finer', 'tests/new', {
    taps: [...METHOD_TAPS, 'design-paired'],
    http: { ...http, '/api/reduction-plan': finer },
  }),
  scene('test-plan-untreated', 'tests/new', { taps: [...METHOD_TAPS, 'design-unpaired', 'plan-it'] }),
  scene('test-begun', 'tests/t3'),
  scene('test-due', 'tests/t2'),
  scene('test-counting', 'tests/t2/after'),
  scene('test-eggs', 'tests/t2/after/a5'),
  scene('test-result', 'tests/t1'),
  scene('test-result-worse', 'tests/t5'),
  scene('test-result-good', 'tests/t6'),
  scene('test-why', 'tests/t1/why'),
  scene('test-why-more', 'tests/t1/why', { taps: ['page-after'] }),
];

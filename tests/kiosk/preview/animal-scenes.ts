import type { AnimalPage } from '../../../shared/animal-page.ts';
import type { ImportView } from '../../../shared/herd-file.ts';
import type { KioskState } from '../../../shared/state.ts';
import { animals, clover, kid, newcomer, page, state, weighing, whom, wormRules } from './animal-data.ts';
import { BASE, NOW, OFFER } from './base-state.ts';
import type { Scene } from './scene.ts';

const http = { '/api/animals/a1': page, '/api/whom-to-treat': whom, '/api/worm-rules': wormRules };
const scene = (name: string, place: string, extra: Partial<Scene> = {}): Scene => ({
  name,
  place,
  state,
  http,
  ...extra,
});
function importScene(name: string, stage: ImportView['stage']): Scene {
  const files = [
    { name: 'herd.csv', bytes: 48_000 },
    { name: 'spring lambs 2026.csv', bytes: 3_100 },
  ];
  return scene(name, 'animals/import', { http: { '/api/import': { files, stage } } });
}

const READY: ImportView['stage'] = {
  step: 'ready',
  file: 'herd.csv',
  id: 'p1',
  rows: 1000,
  good: 990,
  unknownColumns: ['Hobby'],
  unitsMixed: true,
  dateOrder: null,
  species: null,
  asks: null,
  faultCount: 10,
  from: 0,
  faults: [
    { line: 101, column: 'Born', why: 'not-a-date', value: '2025-02-30', already: null },
    {
      line: 201,
      column: 'Electronic tag',
      why: 'spoilt-by-spreadsheet',
      value: '8.40003E+14',
      already: null,
    },
    { line: 301, column: 'Name', why: 'name-in-herd', value: 'Clover', already: 'Clover' },
  ],
};

/** Stands for a photo: a goat's head before a shed. */
const PICTURE =
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 64 64"><path fill="#8a7a5c" d="M0 0h64v64H0z"/>' +
  '<path fill="#eee6d6" d="M18 18l-8-6 4 14q2 22 18 30 16-8 18-30l4-14-8 6q-14-8-28 0z"/>' +
  '<path d="M24 30h5v4h-5zM36 30h5v4h-5zM28 46h9v4h-9z"/></svg>';
const pictured: KioskState = {
  ...state,
  animals: animals.map((animal) =>
    ['a1', 'a4', 'a6'].includes(animal.id) ? { ...animal, photo: 'p.svg' } : animal,
  ),
};
const pictures = {
  '/api/photos/p.svg': PICTURE,
  '/api/animals/a1': { ...page, animal: { ...clover, photo: 'p.svg', inMilkSince: '2025-04-30T00:00:00Z' } },
};

/** Clover and Juniper both wear number 12. */
const twins: KioskState = {
  ...state,
  animals: animals.map((animal) => {
    const [other] = ({ a1: ['a2'], a2: ['a1'] } as Record<string, string[]>)[animal.id] ?? [];
    return other === undefined ? animal : { ...animal, visualTags: ['12'], shares: [other] };
  }),
};

/** Juniper is another record of Clover: entered as a wether, with another tag. */
const contrary: KioskState = {
  ...twins,
  animals: twins.animals.map((animal) => {
    if (animal.id === 'a1') return { ...animal, tag: '982000123456001' };
    return animal.id === 'a2'
      ? { ...animal, class: 'castrate', tag: '982000123456777', species: clover.species }
      : animal;
  }),
};
const mergedPage: AnimalPage = { ...page, merged: [{ id: 'b9', name: '12', at: NOW, by: 'Sam' }] };

const scoredToday = {
  ...state,
  animals: state.animals.map((animal) => ({
    ...animal,
    scoredAt: animal.id === 'a9' ? '2026-04-11T13:51:00Z' : '2026-04-14T13:51:00Z',
  })),
};

/** The animals, their pages, scores and whom to treat. */
export const ANIMAL_SCENES: readonly Scene[] = [
  scene('animals', 'animals'),
  importScene('import-files', { step: 'idle' }),
  importScene('import-refused', {
    step: 'refused',
    file: 'herd.csv',
    why: 'broken-quotes',
    line: 17,
    heading: null,
  }),
  importScene('import-ready', READY),
  importScene('import-order', { ...READY, asks: 'date-order' }),
  importScene('import-species', { ...READY, asks: 'species' }),
  importScene('import-written', { step: 'written', file: 'herd.csv', animals: 990 }),
  scene('animals-none', 'animals', { state: { ...BASE, animals: [] } }),
  scene('animals-by', 'animals/by=B'),
  scene('animals-find', 'animals/find'),
  scene('animals-found', 'animals/find', { taps: ['find-J'] }),
  scene('animal', 'animals/a1'),
  scene('animal-new', 'animals/a1', { http: { '/api/animals/a1': newcomer } }),
  scene('animal-sold', 'animals/a1', {
    state: { ...state, animals: animals.slice(1) },
    http: { '/api/animals/a1': { ...page, life: 'sold', leftAt: NOW, advice: null } },
  }),
  scene('animal-growth', 'animals/a1/growth'),
  scene('animal-growth-touched', 'animals/a1/growth', { taps: ['chart-later', 'chart-earlier'] }),
  scene('animal-growth-dose', 'animals/a1/growth', { taps: ['chart-later'] }),
  scene('animal-growth-kid', 'animals/a7/growth', { http: { '/api/animals/a7': kid } }),
  scene('animal-weight', `animals/a1/growth/${page.weighings[2]?.id}`),
  scene('animal-weight-wrong', 'animals/a1/growth/wrong', {
    http: {
      '/api/animals/a1': {
        ...page,
        weighings: [
          { ...weighing('2026-04-14T13:32:00Z', 30, { doubt: 'said-wrong', said: 'wrong' }), id: 'wrong' },
        ],
      },
    },
  }),
  scene('animal-weight-feed', `animals/a1/growth/${page.weighings[0]?.id}`, {
    taps: ['weight-feed', 'key-1', 'key-2', 'key-done'],
  }),
  scene('animal-growth-first', 'animals/a1/growth', { http: { '/api/animals/a1': newcomer } }),
  scene('animal-why', 'animals/a1/why'),
  scene('animal-note', 'animals/a1/note'),
  scene('animal-score', 'animals/a1/score'),
  scene('animal-score-body', 'animals/a1/score', { taps: ['step-4'] }),
  scene('animal-score-slip', 'animals/a1/score', { state: scoredToday }),
  scene('worm-score-slip', 'worm-check/scores/a9', { state: scoredToday }),
  scene('animal-score-jaw', 'animals/a1/score', { taps: ['step-4', 'step-2.5', 'step-0'] }),
  scene('animals-photo', 'animals', { state: pictured, http: pictures }),
  scene('animal-photo-page', 'animals/a1', { state: pictured, http: pictures }),
  scene('animal-photo-there', 'animals/a1/edit/photo', { state: pictured, http: pictures }),
  scene('animal-edit', 'animals/a1/edit'),
  scene('animal-edit-more', 'animals/a1/edit', { taps: ['page-after'] }),
  scene('animal-photo', 'animals/a1/edit/photo'),
  scene('animal-milk-since', 'animals/a1/edit/in-milk-since'),
  scene('animal-class', 'animals/a1/edit/class'),
  scene('animal-bred', 'animals/a1/edit/bred'),
  scene('animal-pen', 'animals/a1/edit/pen'),
  scene('animal-mark', 'animals/a1/edit/mark'),
  scene('animal-tag', 'animals/a1/edit/tag'),
  scene('animal-tag-read', 'animals/a1/edit/tag', {
    state: { ...state, shed: { ...state.shed, unknownTag: '982000123456999', unknownTagOf: ['a4'] } },
  }),
  scene('animal-edit-twice', 'animals/a1/edit', { state: twins }),
  scene('animal-name', 'animals/a1/edit/name', { taps: ['letter-C', 'letter-A'] }),
  scene('animal-merge', 'animals/a1/edit/merge', { state: twins }),
  scene('animal-merge-tag', 'animals/a1/edit/merge/a2', {
    state: contrary,
    taps: ['merge-name-kept', 'merge-class-kept'],
  }),
  scene('animal-merge-name', 'animals/a1/edit/merge/a2', { state: contrary }),
  scene('animal-merge-held', 'animals/a1/edit/merge/a2', {
    state: contrary,
    taps: ['merge-name-kept', 'merge-class-kept', 'merge-tag-gone', 'hold:merge-hold'],
  }),
  scene('animal-merged', 'animals/a1/edit', {
    http: { '/api/animals/a1': mergedPage },
    taps: ['page-after'],
  }),
  scene('animal-merged-away', 'animals/a2', {
    http: {
      '/api/animals/a2': {
        ...page,
        life: 'merged',
        leftAt: NOW,
        advice: null,
        mergedInto: { id: 'a1', name: 'Clover' },
      },
    },
  }),
  scene('animal-part', 'animals/a1/edit/part', { http: { '/api/animals/a1': mergedPage } }),
  scene('animal-gone', 'animals/a1/edit/gone'),
  scene('worm-doors', 'worm-check'),
  scene('worm-scores', 'worm-check/scores'),
  scene('worm-score', 'worm-check/scores/a1'),
  scene('whom', 'worm-check/whom'),
  scene('whom-nobody', 'worm-check/whom', {
    http: { '/api/whom-to-treat': { ...whom, rows: [], left: null, eggsPerGram: null, notScored: 9 } },
  }),
  scene('whom-too-few', 'worm-check/whom', {
    http: {
      '/api/whom-to-treat': {
        ...whom,
        left: { treat: 2, left: 2, share: 0.5, advised: 1, verdict: 'too-few-left', couldLeave: ['a1'] },
      },
    },
  }),
  scene('whom-eggs', 'worm-check/whom/eggs'),
  scene('worm-rules', 'worm-check/whom/rules'),
  scene('worm-rule-set', 'worm-check/whom/rules/high/female/treatBody'),
  scene('worm-rule-steps', 'worm-check/whom/rules/high/female/treatBody', { taps: ['rule-change'] }),
  scene('worm-rule-keys', 'worm-check/whom/rules/high/female/gainShare'),
  scene('worm-rule-word', 'worm-check/whom/rules/high/young/treatEyelid', { taps: ['rule-3'] }),
  scene('worm-rule-herd', 'worm-check/whom/rules/high/female/scoresLastDays', {
    taps: ['key-1', 'key-4', 'key-done'],
  }),
  scene('home-herd', 'home'),
  scene('visit-new-tag', 'platform', {
    state: {
      ...state,
      platform: { ...state.platform, verdict: 'settling', live: 12_600 },
      shed: { ...state.shed, unknownTag: '982000123456999' },
      round: {
        step: 'visit',
        jugId: 'j7',
        animal: null,
        weight: null,
        onDeck: true,
        likely: animals.map(({ id }) => id),
        unanswered: [],
      },
    },
  }),
  scene('visit-lost-tag', 'platform', {
    state: {
      ...state,
      platform: { ...state.platform, verdict: 'settling', live: 12_600 },
      shed: { ...state.shed, unknownTag: '982000123456000', unknownTagOf: ['a1'] },
      round: {
        step: 'visit',
        jugId: 'j7',
        animal: null,
        weight: null,
        onDeck: true,
        likely: animals.map(({ id }) => id),
        unanswered: [],
      },
    },
  }),
  scene('which-of-two', 'platform', {
    taps: ['animal-tile'],
    state: {
      ...twins,
      platform: { ...state.platform, verdict: 'held', live: 24_600, held: 24_600 },
      round: {
        step: 'visit',
        jugId: 'j7',
        animal: null,
        weight: { grams: 24_600, uncertaintyGrams: 60, at: '2026-04-14T14:02:00Z' },
        onDeck: true,
        likely: ['a1'],
        unanswered: [],
      },
    },
  }),
  scene('animals-twice', 'animals', { state: twins }),
  scene('animal-twice', 'animals/a1', {
    state: twins,
    http: {
      '/api/animals/a1': { ...page, animal: { ...clover, shares: ['a2'] } },
    },
  }),
  scene('visit-score', 'platform', {
    state: {
      ...state,
      platform: { ...state.platform, verdict: 'settling', live: 24_600 },
      round: {
        step: 'visit',
        jugId: 'j7',
        animal: 'a1',
        weight: null,
        onDeck: true,
        likely: animals.map(({ id }) => id),
        unanswered: [],
      },
    },
  }),
  scene('skip-score', 'platform', {
    taps: ['skip'],
    state: {
      ...state,
      offer: OFFER,
      round: {
        step: 'offered',
        jugId: 'j7',
        animal: 'a1',
        weight: { grams: 13_603, uncertaintyGrams: 60, at: '2026-04-14T14:02:00Z' },
        onDeck: false,
        unanswered: [],
      },
    },
  }),
];

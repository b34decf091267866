import { qrCode } from '../../../server/print/qr-code.ts';
import type { BookChoicesView, BookLineView, BookPageView } from '../../../shared/day-book.ts';
import type { CorrectionView } from '../../../shared/dose.ts';
import type { MachinePage } from '../../../shared/machine.ts';
import type { KioskState } from '../../../shared/state.ts';
import { BASE, treatment } from './base-state.ts';
import type { Scene } from './scene.ts';

function at(changes: Partial<KioskState>): KioskState {
  return { ...BASE, ...changes };
}

const corrected = (id: string, kind: CorrectionView['kind'], extra: Partial<CorrectionView> = {}) =>
  treatment(id, {
    animal: 'a6',
    animalName: 'Old Bramble',
    volumeMl: 11.3,
    corrections: [
      {
        id: `c-${id}`,
        kind,
        animal: null,
        animalName: null,
        volumeMl: null,
        meat: null,
        milk: null,
        at: '2026-04-14T13:35:00Z',
        by: 'Sam',
        ...extra,
      },
    ],
  });
const CORRECTED = [
  corrected('t23', 'wrong-volume', { volumeMl: 10.1 }),
  corrected('t22', 'not-given'),
  corrected('t21', 'wrong-animal', { animal: 'a2', animalName: 'Juniper' }),
  treatment('t20', { outcome: 'part' }),
];

const line = (each: KioskState['dayBook'][number]): BookLineView => ({ line: 'treatment', treatment: each });
const ended = (
  id: string,
  kind: 'skipped' | 'lapsed',
  reason: string,
  animalName: string | null,
): BookLineView => ({
  line: 'untreated',
  untreated: {
    id,
    kind,
    animal: animalName === null ? null : 'a2',
    animalName,
    reason,
    weightGrams: 52_300,
    at: '2026-04-14T13:31:00Z',
    provisional: false,
    by: 'Sam',
  },
});
const book = (lines: readonly BookLineView[], next: string | null = null): BookPageView => ({
  lines: [...lines],
  next,
});
const CHOICES: BookChoicesView = {
  medicines: [
    { id: 'fenbendazole', name: 'Fenbendazole' },
    { id: 'levamisole', name: 'Levamisole' },
  ],
  people: ['Robin', 'Sam'],
};
const EVERYTHING = {
  '/api/day-book': book(
    [
      line(BASE.dayBook[0] ?? treatment('t1')),
      ended('u1', 'skipped', 'not-needed', 'Juniper'),
      ...CORRECTED.map(line),
    ],
    '1.1',
  ),
  '/api/day-book/choices': CHOICES,
};
const ENDED = {
  '/api/day-book': book([
    ended('u1', 'skipped', 'sick', 'Juniper'),
    ended('u2', 'lapsed', 'timed-out', 'Old Bramble'),
    ended('u3', 'lapsed', 'identity-doubted', null),
  ]),
  '/api/day-book/choices': CHOICES,
};
const narrowed = (asked: string) => `day-book/${encodeURIComponent(`?${asked}`)}`;
const STICK = { '/api/exports': { folder: '/media/stick', address: null } };
const NETWORK = {
  '/api/exports': { folder: null, address: 'http://192.168.1.20:4180' },
  '/api/exports/treatment-events/qr.svg': qrCode(
    'http://192.168.1.20:4180/api/exports/treatment-events?from=2026-01-01',
  ).html.replace('<svg ', '<svg xmlns="http://www.w3.org/2000/svg" '),
};

/** What a board tells of itself. */
const MACHINE: MachinePage = {
  supply: 'good',
  hot: false,
  celsius: 51.6,
  limitCelsius: 80,
  boardSeconds: 12 * 86_400,
  kioskSeconds: 5 * 3600,
  memory: { kiosk: 96e6, free: 1.4e9, total: 2e9 },
  disk: { free: 21.3e9, total: 31.2e9, records: 48.2e6 },
  version: '0.1.0',
  node: '20.19.2',
};

/** The day book, with corrections of every kind, and the doors of the Shed. */
export const BOOK_AND_SHED_SCENES: readonly Scene[] = [
  {
    name: 'daybook',
    place: 'day-book',
    state: at({}),
    http: { '/api/day-book': book(BASE.dayBook.map(line)), '/api/day-book/choices': CHOICES },
  },
  {
    name: 'daybook-empty',
    place: 'day-book',
    state: at({ dayBook: [] }),
    http: { '/api/day-book': book([]) },
  },
  { name: 'daybook-skips-too', place: 'day-book', state: at({}), http: EVERYTHING },
  {
    name: 'daybook-corrected',
    place: 'day-book',
    state: at({ dayBook: CORRECTED }),
    http: EVERYTHING,
    taps: ['page-after'],
  },
  { name: 'daybook-ended', place: narrowed('kind=lapsed&days=30'), state: at({}), http: ENDED },
  {
    name: 'daybook-none-so',
    place: narrowed('animal=a1&kind=skipped'),
    state: at({}),
    http: { '/api/day-book': book([]) },
  },
  {
    name: 'daybook-narrow',
    place: `${narrowed('animal=a2&medicine=levamisole&days=7')}/narrow`,
    state: at({}),
    http: EVERYTHING,
  },
  { name: 'daybook-narrow-kind', place: `${narrowed('')}/narrow/kind`, state: at({}), http: EVERYTHING },
  {
    name: 'daybook-narrow-animal',
    place: `${narrowed('animal=a2')}/narrow/animal`,
    state: at({}),
    http: EVERYTHING,
  },
  { name: 'take', place: 'day-book/take', state: at({}), http: STICK },
  { name: 'take-period', place: 'day-book/take/register', state: at({}), http: STICK },
  { name: 'take-register', place: 'day-book/take/register/year', state: at({}), http: STICK },
  {
    name: 'take-written',
    place: 'day-book/take/calendar',
    state: at({}),
    http: {
      ...STICK,
      '/api/exports/calendar': { ok: true, file: '/media/stick/byreside-calendar.ics', bytes: 9120 },
    },
    taps: ['take-write'],
  },
  { name: 'take-scan', place: 'day-book/take/treatment-events/quarter', state: at({}), http: NETWORK },
  {
    name: 'take-no-way',
    place: 'day-book/take/weights/all',
    state: at({}),
    http: { '/api/exports': { folder: null, address: null } },
  },
  { name: 'daybook-record-volume', place: 'day-book/t23', state: at({ dayBook: CORRECTED }) },
  { name: 'daybook-record-not-given', place: 'day-book/t22', state: at({ dayBook: CORRECTED }) },
  { name: 'home-corrected', place: 'home', state: at({ dayBook: CORRECTED }) },
  { name: 'daybook-record', place: 'day-book/t4', state: at({}) },
  { name: 'daybook-record-2', place: 'day-book/t4', state: at({}), taps: ['page-after', 'page-after'] },
  { name: 'shed', place: 'shed', state: at({}) },
  { name: 'shed-copies', place: 'shed/copies', state: at({}) },
  { name: 'shed-health', place: 'shed/health', state: at({}), http: { '/api/machine': MACHINE } },
  {
    name: 'shed-health-low',
    place: 'shed/health',
    state: at({ demo: false, machine: { supply: 'low', hot: true } }),
    http: { '/api/machine': { ...MACHINE, supply: 'low', hot: true, celsius: 81.2 } },
  },
  {
    name: 'shed-copies-never',
    place: 'shed/copies',
    state: at({
      keeping: {
        disk: null,
        checkedAt: null,
        backup: { places: [], running: false, last: null, overdue: true, trouble: null },
      },
    }),
  },
  {
    name: 'shed-copies-failed',
    place: 'shed/copies',
    state: at({
      demo: false,
      keeping: {
        ...BASE.keeping,
        disk: 'full',
        backup: { ...BASE.keeping.backup, overdue: true, trouble: 'gone' },
      },
    }),
  },
  {
    name: 'shed-screen-overdue',
    place: 'shed/screen',
    state: at({ keeping: { ...BASE.keeping, backup: { ...BASE.keeping.backup, overdue: true } } }),
  },
  {
    name: 'shed-copies-overdue',
    place: 'shed',
    state: at({ keeping: { ...BASE.keeping, backup: { ...BASE.keeping.backup, overdue: true } } }),
  },
  { name: 'shed-devices', place: 'shed/devices', state: at({}) },
  { name: 'shed-syringes', place: 'shed/syringes', state: at({}) },
  { name: 'shed-rules', place: 'shed/rules', state: at({}) },
  { name: 'shed-rule', place: 'shed/rules/levamisole-goat', state: at({}) },
  { name: 'shed-rule-approved', place: 'shed/rules/levamisole-sheep', state: at({}) },
  { name: 'shed-approve', place: 'shed/rules/levamisole-goat/approve', state: at({}) },
  {
    name: 'shed-approve-vet',
    place: 'shed/rules/levamisole-goat/approve',
    state: at({}),
    taps: ['approve-by-vet', 'vet-unnamed', 'vet-milk-more', 'vet-milk-more'],
  },
  { name: 'shed-voice', place: 'shed/voice', state: at({}) },
  {
    name: 'shed-voice-speaking',
    place: 'shed/voice',
    state: at({
      voice: {
        ...BASE.voice,
        language: 'es',
        voice: 'es-spain',
        rate: 230,
        volume: 100,
        speaking: {
          id: 3,
          what: 'try-out',
          text: 'quince punto cinco mililitros, jeringa de veinte mililitros',
          until: '2026-04-14T14:03:14Z',
        },
      },
    }),
  },
  {
    name: 'shed-voice-muted',
    place: 'shed/voice',
    state: at({ voice: { ...BASE.voice, muted: true, heard: 'no-page' } }),
  },
  { name: 'shed-sounds', place: 'shed/voice/sounds', state: at({}) },
  { name: 'shed-muted', place: 'shed', state: at({ voice: { ...BASE.voice, muted: true } }) },
  { name: 'shed-people', place: 'shed/people', state: at({}) },
  { name: 'shed-screen', place: 'shed/screen', state: at({}) },
  { name: 'cleaning', place: 'shed/screen', state: at({}), taps: ['shed-clean'] },
  { name: 'enrol-species', place: 'shed/enrol', state: at({}) },
  {
    name: 'enrol-number',
    place: 'shed/enrol',
    state: at({}),
    taps: ['choose-goat', 'choose-female', 'choose-milk-yes', 'key-4', 'key-2'],
  },
  {
    name: 'enrol-name',
    place: 'shed/enrol',
    state: at({}),
    taps: ['choose-goat', 'choose-female', 'choose-milk-yes', 'instead-spell', 'letter-D', 'letter-A'],
  },
  {
    name: 'enrol-tag',
    place: 'shed/enrol',
    state: at({ shed: { ...BASE.shed, unknownTag: '982000123450042' } }),
    taps: ['choose-goat', 'choose-male', 'key-4', 'key-2', 'key-done'],
  },
  { name: 'clock-untrusted', place: 'home', state: at({ clockTrusted: false }) },
  {
    name: 'clock-untrusted-platform',
    place: 'platform',
    state: at({ clockTrusted: false }),
  },
  { name: 'clock-day', place: 'shed/zone/set', state: at({ clockTrusted: false }) },
  { name: 'clock-time', place: 'shed/zone/set/2026-04-14', state: at({ clockTrusted: false }) },
  {
    name: 'clock-before-record',
    place: 'shed/zone/set/2026-04-14',
    state: at({ clockTrusted: false, clockFloor: '2027-04-14T12:00:00Z', language: 'es' }),
  },
];

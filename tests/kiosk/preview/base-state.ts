import { SYRINGE_CATALOGUE } from '../../../core/dosing/syringe.ts';
import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { VOICES } from '../../../hardware/mouth/voices.ts';
import { medicineViews } from '../../../server/view/medicine-view.ts';
import { liquidViews, regimenViews } from '../../../server/view/regimen-view.ts';
import type { AnimalView } from '../../../shared/animal.ts';
import type { OfferView, TreatmentView } from '../../../shared/dose.ts';
import { USUAL_EAR } from '../../../shared/ear.ts';
import type { JugView } from '../../../shared/jug.ts';
import type { PlanView } from '../../../shared/mixing.ts';
import type { KioskState } from '../../../shared/state.ts';
import { offView } from '../../server/make/off-view.ts';
import { PLATFORM_CHECK, SYRINGE_CHECK } from './check-state.ts';
import { NETWORK_OFF } from './network-state.ts';

/** The moment at which every picture is taken. */
export const NOW = '2026-04-14T14:03:10Z';

function animal(
  id: string,
  name: string,
  species: AnimalView['species'],
  kilograms: number | null,
  extra: Partial<AnimalView> = {},
): AnimalView {
  return {
    id,
    name,
    species,
    class: 'female',
    tag: null,
    inMilk: false,
    bornAt: null,
    bredAt: null,
    malesRemovedAt: null,
    lastWeightGrams: kilograms === null ? null : kilograms * 1000,
    lastWeighedAt: kilograms === null ? null : '2026-03-20T09:00:00Z',
    visualTags: [],
    pen: null,
    mark: null,
    photo: null,
    shares: [],
    kiddedAt: null,
    inMilkSince: null,
    advice: null,
    scoredAt: null,
    ...extra,
  };
}

/** An invented herd. */
export const HERD: readonly AnimalView[] = [
  animal('a1', 'Clover', 'goat', 24.4, { inMilk: true, tag: '982000123456789' }),
  animal('a2', 'Juniper', 'goat', 26.1),
  animal('a3', '417', 'goat', 22.9),
  animal('a4', 'Biscuit', 'goat', 31.2, { class: 'castrate' }),
  animal('a5', 'Thistle', 'sheep', 58.4),
  animal('a6', 'Old Bramble', 'sheep', 71),
  animal('a7', 'Pip', 'goat', 9.6, { class: 'young' }),
  animal('a8', 'Hazel', 'goat', null),
  animal('a9', 'Marigold', 'cattle', 148, { class: 'young' }),
];

/** A jug in service. */
export const JUG: JugView = {
  form: 'jug',
  id: 'j7',
  number: 7,
  medicine: 'Levamisole',
  active: 'levamisole hydrochloride',
  strengthMgPerMl: 49.45,
  strengthUncertainty: 0.004,
  volumeMl: 946,
  remainingMl: 612,
  letter: 'A',
  expectedGrams: 929,
  mixedAt: '2026-04-14T11:40:00Z',
  useBy: '2026-04-14T23:40:00Z',
  keeps: {
    unit: 'hours',
    value: 12,
    evidence: 'own-guard',
    source:
      'Set by this project as a guard; no source read gives one: use a jug the day it is mixed unless the packet says otherwise',
    monthFirst: false,
  },
  by: 'Sam',
  storage: [],
  refrigerate: false,
  notes: [{ code: 'conflict-window', strength: 'note', values: { days: 14 } }],
  stock: null,
  life: 'in-life',
};

/** Another jug of it in service, half as strong. */
export const RIVAL: JugView = {
  ...JUG,
  id: 'j8',
  number: 8,
  letter: 'B',
  expectedGrams: 2168,
  strengthMgPerMl: 24.7,
  mixedAt: '2026-04-14T12:55:00Z',
  remainingMl: 1800,
};

/** The recipe of a jug being mixed. */
export const PLAN: PlanView = {
  medicine: 'Levamisole',
  packetId: 'levamisole-52g',
  mode: 'make-up-to',
  amount: { kind: 'packets', count: 1 },
  celsius: 10,
  namedVolumeMl: 946.353,
  finalVolumeMl: 946.353,
  powderVolumeMl: 41.6,
  waterGrams: 903.5,
  powderGrams: 52,
  strengthMgPerMl: 49.45,
};

const measured: Omit<Pick<OfferView, keyof OfferView & keyof TreatmentView>, 'id'> = {
  animal: 'a1',
  animalName: 'Clover',
  species: 'goat',
  active: 'levamisole hydrochloride',
  jugId: 'j7',
  jugNumber: 7,
  volumeMl: 6,
  exactVolumeMl: 5.9706,
  syringe: 'syringe-6-by-0.1',
  syringeName: '6 mL syringe',
  syringeCapacityMl: 6,
  syringeGraduationMl: 0.1,
  draws: 1,
  marksMl: [6],
  strengthMgPerMl: 49.45,
  targetMgPerKg: 12,
  deliveredMgPerKg: { value: 12.06, low: 11.4, high: 12.72 },
  shares: [
    { of: 'scale and animal', share: 0.4 },
    { of: 'strength of the jug', share: 0.1 },
    { of: 'syringe', share: 0.5 },
  ],
  weightGrams: 24_600,
  weightUncertaintyGrams: 90,
  weighedAt: '2026-04-14T14:02:00Z',
  proof: 'tap',
  route: 'oral drench',
};

/** A dose held out for a kid of 13.6 kg: 3.3 mL in one draw. */
export const OFFER: OfferView = {
  ...measured,
  id: 'o1',
  volumeMl: 3.3,
  exactVolumeMl: 3.301,
  marksMl: [3.3],
  weightGrams: 13_603,
  deliveredMgPerKg: { value: 11.996, low: 11.3, high: 12.7 },
  agitate: 'swirl',
  technique: { how: 'drench', text: 'Head level, over the back of the tongue, slowly' },
  cautions: [{ code: 'extra-label', strength: 'note', values: {} }],
  expiresAt: '2026-04-14T14:12:00Z',
};

/** A dose of two draws for a heavier animal. */
export const TWO_DRAWS: OfferView = {
  ...OFFER,
  id: 'o2',
  animal: 'a6',
  animalName: 'Old Bramble',
  species: 'sheep',
  volumeMl: 11.5,
  exactVolumeMl: 11.486,
  syringe: 'syringe-6-by-0.1',
  draws: 2,
  marksMl: [5.8, 5.7],
  weightGrams: 71_000,
  deliveredMgPerKg: { value: 8.01, low: 7.7, high: 8.3 },
  cautions: [],
};

/** A row of the day book. */
export function treatment(id: string, extra: Partial<TreatmentView> = {}): TreatmentView {
  return {
    ...measured,
    id,
    sequence: 40,
    offerId: `offer-${id}`,
    outcome: 'whole',
    leftMl: null,
    group: null,
    givenAt: '2026-04-14T14:03:00Z',
    provisional: false,
    by: 'Sam',
    readBack: false,
    late: false,
    direction: 'veterinarian',
    stock: null,
    meatClear: { kind: 'at', at: '2026-04-18T14:03:00Z' },
    milkClear: { kind: 'unknown' },
    acceptedCautions: [],
    corrections: [],
    ...extra,
  };
}

/** What ships, with sheep approved for levamisole on the label. */
export const REGIMENS = regimenViews(SHIPPED, [
  {
    regimenId: 'levamisole-sheep',
    figures: null,
    by: 'Sam',
    direction: 'label',
    vet: null,
    atMs: Date.UTC(2026, 3, 2, 8),
    targetMgPerKg: null,
    meat: null,
    milk: null,
  },
]);
const counters = { opens: 1, losses: 0, frames: 5120, badFrames: 2, discardedBytes: 31 };

/** A quiet barn with everything in order, before a jug is in hand. */
export const BASE: KioskState = {
  bootId: 'boot-1',
  now: NOW,
  clockTrusted: true,
  clockFloor: NOW,
  demo: true,
  practice: false,
  problem: null,
  safetyRead: true,
  firstStart: null,
  panel: { widthPx: 800, heightPx: 480, pxPerMm: 5.25 },
  face: 'dim',
  language: 'en',
  weightUnit: 'lb',
  timeZone: 'UTC',
  platform: { link: 'ready', live: 0, held: null, uncertainty: null, verdict: 'empty', division: 45.359237 },
  bench: { link: 'ready', live: 0, steady: true, division: 1 },
  wand: { link: 'ready' },
  jug: { step: 'idle' },
  check: { step: 'idle' },
  syringeCheck: { step: 'idle' },
  round: { step: 'no-jug', unanswered: [] },
  offer: null,
  card: null,
  animals: [...HERD],
  seasonRevision: 0,
  herdRevision: 0,
  wormCheck: { revision: 0, open: 0, due: 0, failed: [] },
  board: HERD.map(({ id }) => ({
    animal: id,
    milk: { kind: 'free' as const },
    meat: { kind: 'free' as const },
  })),
  jugs: [JUG],
  dayBook: [
    treatment('t5', { animal: 'a2', animalName: 'Juniper', volumeMl: 6.3, givenAt: '2026-04-14T13:41:00Z' }),
    treatment('t4', {
      animalName: 'Clover',
      volumeMl: 3.3,
      givenAt: '2026-04-14T13:32:00Z',
      acceptedCautions: [{ code: 'milk-time-unknown', strength: 'ask', values: {} }],
      corrections: [
        {
          id: 'c1',
          kind: 'wrong-animal',
          animal: 'a3',
          animalName: '417',
          volumeMl: null,
          meat: null,
          milk: null,
          at: '2026-04-14T13:35:00Z',
          by: 'Sam',
        },
      ],
    }),
    treatment('t3', {
      animalName: 'Biscuit',
      volumeMl: 7.6,
      outcome: 'spat-out',
      givenAt: '2026-04-14T13:20:00Z',
    }),
    treatment('t2', {
      animalName: 'Old Bramble',
      volumeMl: 11.5,
      draws: 2,
      marksMl: [5.8, 5.7],
      givenAt: '2026-04-13T17:05:00Z',
    }),
    treatment('t1', { animalName: 'Thistle', volumeMl: 9.4, late: true, givenAt: '2026-04-13T16:50:00Z' }),
    treatment('t0', { animalName: 'Pip', volumeMl: 2.3, givenAt: '2026-04-12T09:12:00Z' }),
  ],
  stock: { currency: 'EUR', lots: [], expired: [], last: [] },
  network: NETWORK_OFF,
  farm: { apart: [], sharing: { kind: 'none', invitation: null } },
  keeping: {
    disk: null,
    checkedAt: '2026-04-12T03:10:00Z',
    backup: {
      places: ['/media/stick'],
      running: false,
      last: { at: '2026-04-13T19:22:00Z', place: '/media/stick' },
      overdue: false,
      trouble: null,
    },
  },
  machine: { supply: 'good', hot: false },
  shed: {
    devices: [
      {
        role: 'platform',
        link: 'ready',
        path: '/dev/byreside-platform',
        profile: 'sma',
        baud: 9600,
        capacityGrams: 150_000,
        divisionGrams: 50,
        zeroable: true,
        trouble: null,
        counters,
      },
      {
        role: 'bench',
        link: 'lost',
        path: '/dev/byreside-bench',
        profile: 'st-gs',
        baud: 9600,
        capacityGrams: null,
        divisionGrams: 1,
        zeroable: false,
        trouble:
          'The cable of the bench scale is out, or its USB plug. Push both in; it comes back by itself.',
        counters: { ...counters, losses: 3 },
      },
      {
        role: 'wand',
        link: 'absent',
        path: null,
        profile: null,
        baud: null,
        capacityGrams: null,
        divisionGrams: null,
        zeroable: false,
        trouble: null,
        counters,
      },
    ],
    setup: { step: 'closed', why: 'not-in-demo' },
    syringes: SYRINGE_CATALOGUE.map((syringe) => ({
      id: syringe.id,
      name: syringe.name,
      capacityMl: syringe.capacity.value,
      graduationMl: syringe.graduation.value,
      onHand: ['syringe-3-by-0.1', 'syringe-6-by-0.1', 'syringe-12-by-0.2'].includes(syringe.id),
      check: syringe.id === 'syringe-6-by-0.1' ? SYRINGE_CHECK : null,
    })),
    checks: {
      platform: { last: PLATFORM_CHECK, standing: 'fresh' },
      bench: { last: null, standing: 'never' },
      everyDays: 30,
      stops: false,
    },
    regimens: [...REGIMENS],
    packets: [
      {
        id: 'levamisole-52g',
        medicine: 'Levamisole',
        active: 'levamisole hydrochloride',
        grossGrams: 52,
        activeGrams: 46.8,
        madeUpToMl: 946.352946,
        handling: ['Wear gloves', 'Do not breathe the powder'],
      },
    ],
    medicines: medicineViews(SHIPPED, new Set(), new Set()),
    vets: [],
    formularyTrouble: [],
    liquids: liquidViews(SHIPPED),
    people: ['Sam', 'Alex', 'Robin'],
    person: 'Sam',
    unknownTag: null,
    unknownTagOf: [],
  },
  voice: {
    language: 'en',
    voice: 'en-us',
    rate: 155,
    volume: 80,
    muted: false,
    voices: VOICES.map(({ id, language }) => ({ id, language })),
    engine: 'kiosk',
    heard: 'heard',
    speaking: null,
  },
  ear: offView({ ...USUAL_EAR, mode: 'off' }, 0),
};

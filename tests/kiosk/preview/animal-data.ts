import { CLASS_RULE_NAMES, HERD_RULE_NAMES, placesOf, thresholdAt } from '../../../core/worms/farm-rules.ts';
import { SHIPPED_RULES } from '../../../core/worms/treat-rules.ts';
import type { AnimalPage, WhomView } from '../../../shared/animal-page.ts';
import type { KioskState } from '../../../shared/state.ts';
import type { WormRulesView } from '../../../shared/worm-rules.ts';
import { BASE, HERD, treatment } from './base-state.ts';

const ADVICE = { a1: 'treat', a3: 'look-again', a4: 'leave', a8: 'treat' } as const;
/** The herd with what the animals' screens show of it. */
export const animals: KioskState['animals'] = HERD.map((animal) => ({
  ...animal,
  advice: ADVICE[animal.id as keyof typeof ADVICE] ?? null,
  visualTags: animal.id === 'a1' ? ['12', 'B7'] : [],
  pen: animal.id === 'a1' ? 'North' : animal.id === 'a2' ? '3' : null,
  mark: animal.id === 'a1' ? 'red' : null,
  bornAt: animal.id === 'a1' ? '2024-03-02T00:00:00Z' : null,
  bredAt: animal.id === 'a1' ? '2026-01-12T00:00:00Z' : null,
  kiddedAt: animal.id === 'a1' ? '2025-04-30T00:00:00Z' : null,
}));
/** The kiosk with that herd. */
export const state: KioskState = { ...BASE, animals };
const [first] = animals;
if (first === undefined) throw new Error('the herd is empty');
/** The animal most screens are drawn with. */
export const clover = first;

/** A weight of a scale, in kilograms. */
export function weighing(
  at: string,
  kilograms: number,
  extra: Partial<AnimalPage['weighings'][number]> = {},
) {
  return {
    at,
    grams: kilograms * 1000,
    uncertaintyGrams: 120,
    id: `${Date.parse(at)}:${kilograms * 1000}`,
    method: 'scale',
    doubt: null,
    said: null,
    hoursOffFeed: null,
    ...extra,
  } as const;
}

/** Clover's own page. */
export const page: AnimalPage = {
  animal: clover,
  life: 'present',
  leftAt: null,
  formerTags: ['982000123456000'],
  mergedInto: null,
  merged: [],
  weighings: [
    weighing('2026-04-14T13:32:00Z', 24.6),
    weighing('2026-03-20T09:00:00Z', 24.4),
    weighing('2026-03-02T09:00:00Z', 50.1, { doubt: 'pounds-for-kilograms' }),
    weighing('2026-02-14T09:00:00Z', 23.1, { uncertaintyGrams: 450 }),
    weighing('2026-01-20T09:00:00Z', 21.9),
    weighing('2025-12-28T09:00:00Z', 21.2, { method: 'imported', uncertaintyGrams: null }),
  ],
  growth: {
    lastGain: 8,
    trend: { gain: 34, low: 12, high: 52, direction: 'gaining', used: 5, doubted: 1, unlikeFeed: false },
    mob: { own: 24, mean: 41, others: 6, standing: 'behind' },
  },
  scores: [
    { at: '2026-04-13T08:00:00Z', by: 'Sam', eyelid: 4, body: 2.5, soiling: 1, jaw: 'none', coat: 'rough' },
    { at: '2026-02-20T08:00:00Z', by: 'Sam', eyelid: 2, body: 2.5, soiling: 0, jaw: 'none', coat: 'smooth' },
    { at: '2026-01-12T08:00:00Z', by: 'Sam', eyelid: 3, body: 2, soiling: null, jaw: null, coat: null },
  ],
  notes: [{ at: '2026-04-10T08:00:00Z', by: 'Sam', note: 'off-feed' }],
  treatments: [
    treatment('t4', { givenAt: '2026-04-14T13:32:00Z', volumeMl: 6 }),
    treatment('t1', { givenAt: '2026-02-14T13:32:00Z', volumeMl: 5.7 }),
  ],
  eggCounts: [
    {
      id: 'c1',
      animals: [{ id: 'a1', name: 'Clover' }],
      eggs: 12,
      method: { kind: 'slide', dungGrams: 4, suspensionMl: 60, countedMl: 0.3 },
      factor: 50,
      eggsPerGram: 600,
      low: 310.04,
      high: 1048.08,
      purpose: 'herd',
      test: null,
      takenAt: '2026-04-13T12:00:00Z',
      loggedAt: '2026-04-13T13:00:00Z',
      by: 'Sam',
      takenBack: false,
      corrections: [],
    },
  ],
  advice: {
    animal: 'a1',
    advice: 'treat',
    lookAgainAt: '2026-04-21T08:00:00Z',
    reasons: [
      {
        sign: 'eyelid-pale',
        speaksFor: 'treat',
        source: 'Five point check, sheep101.info/5ptcheck: treat 4 and 5',
      },
      {
        sign: 'behind-the-mob',
        speaksFor: 'look-again',
        source: 'Vet Times 2025: treat those below the average gain of some 30',
      },
      { sign: 'coat-rough', speaksFor: 'look-again', source: 'Five point check, sheep101.info/5ptcheck' },
      { sign: 'clean', speaksFor: 'leave', source: 'Common practice, no source' },
      {
        sign: 'body-fit',
        speaksFor: 'leave',
        source: 'Five point check, waldeneffect.org: 2 and less usually treated',
      },
    ],
  },
};

function row(animal: string, advice: 'treat' | 'leave' | 'look-again', signs: readonly string[]) {
  return {
    animal,
    advice,
    lookAgainAt: '2026-04-21T08:00:00Z',
    reasons: signs.map((sign) => ({ sign, speaksFor: advice, source: 's' })),
  } as WhomView['rows'][number];
}

/** Whom to treat of the herd. */
export const whom: WhomView = {
  season: 'high',
  eggsPerGram: 350,
  eggsEntered: true,
  counted: null,
  rows: [
    row('a1', 'treat', ['eyelid-pale', 'behind-the-mob']),
    row('a8', 'treat', ['jaw-swollen']),
    row('a3', 'look-again', ['eyelid-middling', 'soiled']),
    row('a4', 'leave', ['eyelid-red', 'body-fit', 'with-the-mob']),
  ],
  left: { treat: 2, left: 2, share: 0.5, advised: 0.15, verdict: 'enough-left', couldLeave: [] },
  notScored: 5,
};

const ownRule = { source: 'Set on the veterinarian’s word: Sam', setAt: '2026-04-02T08:00:00Z' } as const;
/** The thresholds, one of them the farm's own. */
export const wormRules: WormRulesView = {
  season: 'high',
  rules: [...CLASS_RULE_NAMES, ...HERD_RULE_NAMES]
    .flatMap((rule) => placesOf({ rule, season: null, class: null }))
    .map((place) => {
      const { value, evidence, source } = thresholdAt(SHIPPED_RULES, place);
      const shown = { ...place, value, evidence, source, setAt: null, shipped: { value, source } };
      return place.rule === 'treatBody'
        ? { ...shown, ...ownRule, value: 2.5, evidence: 'veterinarian' }
        : shown;
    }),
};

/** An animal of which nothing is known yet. */
export const newcomer: AnimalPage = {
  ...page,
  animal: { ...clover, advice: null, mark: null, pen: null, bredAt: null, kiddedAt: null },
  weighings: page.weighings.slice(0, 1),
  growth: { lastGain: null, trend: null, mob: null },
  scores: [],
  notes: [],
  treatments: [],
  eggCounts: [],
  advice: null,
};

const pip = animals.find(({ id }) => id === 'a7') ?? clover;
/** A kid that grows. */
export const kid: AnimalPage = {
  ...newcomer,
  animal: { ...pip, bornAt: '2026-02-02T00:00:00Z' },
  weighings: [
    weighing('2026-04-14T13:32:00Z', 9.6, { uncertaintyGrams: 60 }),
    weighing('2026-03-30T09:00:00Z', 8.1, { uncertaintyGrams: 60 }),
    weighing('2026-03-16T09:00:00Z', 6.4, { uncertaintyGrams: 90 }),
    weighing('2026-03-01T09:00:00Z', 5.2, { uncertaintyGrams: 60 }),
    weighing('2026-02-03T09:00:00Z', 3.4, { method: 'imported', uncertaintyGrams: null }),
  ],
  growth: {
    lastGain: 100,
    trend: { gain: 86, low: 64, high: 108, direction: 'gaining', used: 5, doubted: 0, unlikeFeed: false },
    mob: null,
  },
};

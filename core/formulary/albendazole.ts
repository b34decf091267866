import { NO_LIMITS } from '../medicine/limits.ts';
import { Medicine } from '../medicine/medicine.ts';
import {
  DRENCH_TECHNIQUE,
  LABEL_LIQUID,
  REPEAT_GUARD,
  SHAKE_SUSPENSION,
  VET_ONLY,
  WASH_SPLASHES,
} from './common.ts';
import { GOAT_CHART, NO_MEAT_SOURCE, SHEEP_CHART, SMALL_RUMINANT_PAGE } from './sources.ts';

const CFR = '21 CFR 520.38a, edition of 2019-04-01, and its earlier number 520.45a (undated copy)';
const FDA_GOAT = 'FDA freedom-of-information summary, NADA 110-048 supplement, 2008-01-24';
const NO_MILK_TOLERANCE = '21 CFR 556.34 (undated copy): no milk tolerance is set';
/** Sheep chart and extension page say 45 days where the rule is said to say less: the longest is taken. */
const NEWLY_BRED = {
  afterBredDays: {
    value: 45,
    evidence: 'secondary',
    source: `${SHEEP_CHART}; ${SMALL_RUMINANT_PAGE}: 45 days`,
  },
  afterMalesDays: {
    value: 45,
    evidence: 'secondary',
    source: `${SHEEP_CHART}; ${SMALL_RUMINANT_PAGE}: 45 days`,
  },
} as const;
const DEFORMS = {
  text: 'It can deform the unborn: never in early pregnancy',
  evidence: 'primary',
  source: CFR,
} as const;

/** Albendazole suspension, in both strengths of the rule. */
export const ALBENDAZOLE: Medicine = Medicine.parse({
  id: 'albendazole',
  name: 'Albendazole',
  active: 'albendazole',
  group: 'benzimidazole',
  presentations: [
    {
      ...LABEL_LIQUID,
      id: 'albendazole-113.6',
      strength: { value: 113.6, percent: 11.36, evidence: 'primary', source: CFR },
    },
    {
      ...LABEL_LIQUID,
      id: 'albendazole-45.5',
      strength: { value: 45.5, percent: 4.55, evidence: 'primary', source: CFR },
    },
  ],
  regimens: [
    {
      id: 'albendazole-sheep',
      species: 'sheep',
      use: 'label',
      route: 'oral drench',
      purpose: null,
      presentationIds: null,
      target: { value: 7.5, printedMgPerLb: 3.4, evidence: 'primary', source: `${CFR}, (e)(2)` },
      ceiling: null,
      floor: null,
      repeatAfterDays: REPEAT_GUARD,
      topUp: false,
      limits: { ...NO_LIMITS, pregnancy: NEWLY_BRED },
      meat: { kind: 'days', days: 7, evidence: 'secondary', source: `${SHEEP_CHART}: 7 days` },
      milk: { kind: 'not-for-people', source: NO_MILK_TOLERANCE },
      printed: [],
      notes: [DEFORMS],
    },
    {
      id: 'albendazole-goat-fluke',
      species: 'goat',
      use: 'label',
      route: 'oral drench',
      purpose: 'adult liver fluke',
      presentationIds: ['albendazole-113.6'],
      target: { value: 10, printedMgPerLb: 4.54, evidence: 'primary', source: FDA_GOAT },
      ceiling: null,
      floor: null,
      repeatAfterDays: REPEAT_GUARD,
      topUp: false,
      limits: {
        ...NO_LIMITS,
        pregnancy: NEWLY_BRED,
        notInMilk: { why: 'Labelled for goats not giving milk only', evidence: 'primary', source: FDA_GOAT },
      },
      meat: { kind: 'unknown', source: NO_MEAT_SOURCE },
      milk: { kind: 'not-for-people', source: `${FDA_GOAT}: non-lactating goats only` },
      printed: [{ presentationId: 'albendazole-113.6', ml: 4, per: 100, unit: 'lb' }],
      notes: [DEFORMS],
    },
    {
      id: 'albendazole-goat',
      species: 'goat',
      use: 'extra-label',
      route: 'oral drench',
      purpose: null,
      presentationIds: null,
      target: { value: 20, evidence: 'secondary', source: `${GOAT_CHART}: 2 mL of 113.6 mg/mL for 25 lb` },
      ceiling: null,
      floor: null,
      repeatAfterDays: REPEAT_GUARD,
      topUp: false,
      limits: {
        ...NO_LIMITS,
        pregnancy: {
          ...NEWLY_BRED,
          afterBredDays: {
            value: 50,
            evidence: 'secondary',
            source: `${GOAT_CHART}: not in the first third of pregnancy, 50 of 150 days`,
          },
        },
      },
      meat: { kind: 'days', days: 9, evidence: 'secondary', source: `${GOAT_CHART}: 9 days` },
      milk: {
        kind: 'unknown',
        source: 'The goat chart of 2006 gives 7 days, but was found wrong on milk elsewhere: ask the vet',
      },
      printed: [{ presentationId: 'albendazole-113.6', ml: 2, per: 25, unit: 'lb' }],
      notes: [VET_ONLY, DEFORMS],
    },
    {
      id: 'albendazole-cattle',
      species: 'cattle',
      use: 'label',
      route: 'oral drench',
      purpose: null,
      presentationIds: ['albendazole-113.6'],
      target: { value: 10, printedMgPerLb: 4.54, evidence: 'primary', source: `${CFR}, (e)(1)` },
      ceiling: null,
      floor: null,
      repeatAfterDays: REPEAT_GUARD,
      topUp: false,
      limits: {
        ...NO_LIMITS,
        pregnancy: {
          afterBredDays: { value: 45, evidence: 'primary', source: `${CFR}, (e)(1)` },
          afterMalesDays: { value: 45, evidence: 'primary', source: `${CFR}, (e)(1)` },
        },
        notDairy: {
          why: 'Not for dairy females of breeding age',
          evidence: 'primary',
          source: `${CFR}, (e)(1)`,
        },
      },
      meat: { kind: 'days', days: 27, evidence: 'primary', source: `${CFR}, (e)(1)` },
      milk: { kind: 'not-for-people', source: `${CFR}, (e)(1): not for dairy females of breeding age` },
      printed: [],
      notes: [DEFORMS],
    },
  ],
  agitate: { how: 'shake', line: SHAKE_SUSPENSION },
  technique: DRENCH_TECHNIQUE,
  handling: [WASH_SPLASHES],
  storage: [],
  refrigerate: false,
  conflicts: [],
  extras: [],
  watch: null,
});

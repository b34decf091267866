import { NO_LIMITS } from '../medicine/limits.ts';
import { Medicine } from '../medicine/medicine.ts';
import { DRENCH_TECHNIQUE, LABEL_LIQUID, REPEAT_GUARD, VET_ONLY, WASH_SPLASHES } from './common.ts';
import { GOAT_CHART, IN_THE_TRADE, NO_MILK_SOURCE, SHEEP_CHART } from './sources.ts';

const FDA = 'FDA freedom-of-information summary, NADA 131-392, 1988-07-26, and a label of 2022-08-04';
/** What is never given by mouth, whatever its strength. */
const NOT_BY_MOUTH = {
  text: 'Only the drench: never an injection or a pour-on by mouth',
  evidence: 'secondary',
  source: SHEEP_CHART,
} as const;

/** Ivermectin drench for sheep. */
export const IVERMECTIN: Medicine = Medicine.parse({
  id: 'ivermectin',
  name: 'Ivermectin',
  active: 'ivermectin',
  group: 'macrocyclic-lactone',
  presentations: [
    {
      ...LABEL_LIQUID,
      id: 'ivermectin-0.8',
      strength: { value: 0.8, percent: 0.08, evidence: 'primary', source: `${FDA}: 0.08 % w/v` },
    },
  ],
  regimens: [
    {
      id: 'ivermectin-sheep',
      species: 'sheep',
      use: 'label',
      route: 'oral drench',
      purpose: null,
      presentationIds: null,
      target: { value: 0.2, evidence: 'primary', source: `${FDA}: 200 mcg/kg` },
      ceiling: null,
      floor: null,
      repeatAfterDays: REPEAT_GUARD,
      topUp: false,
      limits: NO_LIMITS,
      meat: { kind: 'days', days: 11, evidence: 'secondary', source: `${SHEEP_CHART}: 11 days` },
      milk: {
        kind: 'not-for-people',
        source: '21 CFR 556.344, text of 2024-03-22: no milk tolerance for sheep',
      },
      printed: [{ presentationId: 'ivermectin-0.8', ml: 3, per: 26, unit: 'lb' }],
      notes: [NOT_BY_MOUTH],
    },
    {
      id: 'ivermectin-goat',
      species: 'goat',
      use: 'extra-label',
      route: 'oral drench',
      purpose: null,
      presentationIds: null,
      target: { value: 0.4, evidence: 'secondary', source: `${GOAT_CHART}: 0.4 mg/kg, 6 mL for 25 lb` },
      ceiling: null,
      floor: null,
      repeatAfterDays: REPEAT_GUARD,
      topUp: false,
      limits: NO_LIMITS,
      meat: { kind: 'days', days: 14, evidence: 'secondary', source: `${GOAT_CHART}: 14 days` },
      milk: { kind: 'unknown', source: NO_MILK_SOURCE },
      printed: [{ presentationId: 'ivermectin-0.8', ml: 6, per: 25, unit: 'lb' }],
      notes: [VET_ONLY, NOT_BY_MOUTH],
    },
  ],
  agitate: {
    how: 'swirl',
    line: { text: 'Turn the bottle over once or twice', evidence: 'common-practice', source: IN_THE_TRADE },
  },
  technique: DRENCH_TECHNIQUE,
  handling: [WASH_SPLASHES],
  storage: [
    {
      keep: 'dark',
      line: { text: 'Keep from light', evidence: 'secondary', source: `${SHEEP_CHART}, and a label` },
    },
  ],
  refrigerate: false,
  conflicts: [],
  extras: [],
  watch: null,
});

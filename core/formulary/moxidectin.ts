import { NO_LIMITS } from '../medicine/limits.ts';
import { Medicine } from '../medicine/medicine.ts';
import { DRENCH_TECHNIQUE, LABEL_LIQUID, REPEAT_GUARD, VET_ONLY, WASH_SPLASHES } from './common.ts';
import { GOAT_CHART, IN_THE_TRADE, SHEEP_CHART, SMALL_RUMINANT_PAGE } from './sources.ts';

const CFR = '21 CFR 520.1454, eCFR text of 2026-04-05; 70 FR 76163 (2005)';

/** Moxidectin drench for sheep. */
export const MOXIDECTIN: Medicine = Medicine.parse({
  id: 'moxidectin',
  name: 'Moxidectin',
  active: 'moxidectin',
  group: 'macrocyclic-lactone',
  presentations: [
    {
      ...LABEL_LIQUID,
      id: 'moxidectin-1',
      strength: { value: 1, percent: 0.1, evidence: 'primary', source: `${CFR}: 1 mL is 1 mg` },
    },
  ],
  regimens: [
    {
      id: 'moxidectin-sheep',
      species: 'sheep',
      use: 'label',
      route: 'oral drench',
      purpose: null,
      presentationIds: null,
      target: { value: 0.2, evidence: 'primary', source: `${CFR}: 1 mL for 11 lb or 5 kg` },
      ceiling: null,
      floor: null,
      repeatAfterDays: REPEAT_GUARD,
      topUp: false,
      limits: {
        ...NO_LIMITS,
        minAgeDays: {
          value: 122,
          evidence: 'secondary',
          source: `${SMALL_RUMINANT_PAGE}: the US label says lambs over 4 months`,
        },
        notInMilk: { why: 'Not for ewes whose milk people take', evidence: 'primary', source: CFR },
      },
      meat: { kind: 'days', days: 7, evidence: 'primary', source: CFR },
      milk: { kind: 'not-for-people', source: `${CFR}: not in ewes giving milk for people` },
      printed: [
        { presentationId: 'moxidectin-1', ml: 1, per: 11, unit: 'lb' },
        { presentationId: 'moxidectin-1', ml: 1, per: 5, unit: 'kg' },
      ],
      notes: [],
    },
    {
      id: 'moxidectin-goat',
      species: 'goat',
      use: 'extra-label',
      route: 'oral drench',
      purpose: null,
      presentationIds: null,
      target: {
        value: 0.4,
        printedMgPerLb: 0.18,
        evidence: 'secondary',
        source: 'Farm page of April 2009 quoting the small-ruminant consortium: twice the sheep dose',
      },
      ceiling: null,
      floor: null,
      repeatAfterDays: REPEAT_GUARD,
      topUp: false,
      limits: {
        ...NO_LIMITS,
        notInMilk: { why: 'Not for dairy goats in milk', evidence: 'secondary', source: GOAT_CHART },
      },
      meat: {
        kind: 'unknown',
        source: 'The goat chart of 2006 gives 14 days at 0.3 mg/kg; none was read for 0.4: ask the vet',
      },
      milk: { kind: 'not-for-people', source: `${GOAT_CHART}: not for lactating dairy goats` },
      printed: [],
      notes: [
        VET_ONLY,
        {
          text: 'Only the drench: never an injection or a pour-on by mouth',
          evidence: 'secondary',
          source: SHEEP_CHART,
        },
      ],
    },
  ],
  agitate: {
    how: 'swirl',
    line: { text: 'Turn the bottle over once or twice', evidence: 'common-practice', source: IN_THE_TRADE },
  },
  technique: DRENCH_TECHNIQUE,
  handling: [WASH_SPLASHES],
  storage: [],
  refrigerate: false,
  conflicts: [],
  extras: [],
  watch: null,
});

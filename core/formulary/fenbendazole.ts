import { NO_LIMITS } from '../medicine/limits.ts';
import { Medicine } from '../medicine/medicine.ts';
import { DRENCH_TECHNIQUE, LABEL_LIQUID, REPEAT_GUARD, VET_ONLY, WASH_SPLASHES } from './common.ts';
import { GOAT_CHART, NO_MEAT_SOURCE, NO_MILK_SOURCE } from './sources.ts';

const CFR = '21 CFR 520.905a, eCFR text after 2014';
const FDA_RECORD = 'FDA product record, NADA 128-620 (undated), and FDA notice of 2026-01-22';
const LABEL = 'Label, fenbendazole 100 mg/mL, goat, 2021-09-13';
const WARM = {
  keep: 'not-warm-or-frozen',
  line: { text: 'Keep at or below 25 °C; do not freeze', evidence: 'primary', source: LABEL },
} as const;

/** Fenbendazole suspension. */
export const FENBENDAZOLE: Medicine = Medicine.parse({
  id: 'fenbendazole',
  name: 'Fenbendazole',
  active: 'fenbendazole',
  group: 'benzimidazole',
  presentations: [
    {
      ...LABEL_LIQUID,
      id: 'fenbendazole-100',
      strength: { value: 100, percent: 10, evidence: 'primary', source: CFR },
    },
  ],
  regimens: [
    {
      id: 'fenbendazole-goat',
      species: 'goat',
      use: 'label',
      route: 'oral drench',
      purpose: null,
      presentationIds: null,
      target: { value: 5, printedMgPerLb: 2.3, evidence: 'primary', source: `${CFR}, (e)(4)` },
      ceiling: null,
      floor: null,
      repeatAfterDays: REPEAT_GUARD,
      topUp: false,
      limits: {
        ...NO_LIMITS,
        notInMilk: {
          why: 'Labelled for goats not giving milk only',
          evidence: 'primary',
          source: FDA_RECORD,
        },
      },
      meat: { kind: 'days', days: 6, evidence: 'primary', source: FDA_RECORD },
      milk: {
        kind: 'hours',
        hours: 120,
        evidence: 'primary',
        source: 'FARAD goat page (undated): 120 hours at 5 mg/kg; an older chart that says none is unsafe',
      },
      printed: [
        { presentationId: 'fenbendazole-100', ml: 0.6, per: 25, unit: 'lb' },
        { presentationId: 'fenbendazole-100', ml: 1.2, per: 50, unit: 'lb' },
        { presentationId: 'fenbendazole-100', ml: 1.7, per: 75, unit: 'lb' },
        { presentationId: 'fenbendazole-100', ml: 2.3, per: 100, unit: 'lb' },
        { presentationId: 'fenbendazole-100', ml: 2.9, per: 125, unit: 'lb' },
      ],
      notes: [],
    },
    {
      id: 'fenbendazole-goat-double',
      species: 'goat',
      use: 'extra-label',
      route: 'oral drench',
      purpose: null,
      presentationIds: null,
      target: { value: 10, evidence: 'secondary', source: `${GOAT_CHART}: 1.1 mL for 25 lb` },
      ceiling: null,
      floor: null,
      repeatAfterDays: REPEAT_GUARD,
      topUp: false,
      limits: NO_LIMITS,
      meat: { kind: 'days', days: 16, evidence: 'secondary', source: `${GOAT_CHART}: 16 days` },
      milk: {
        kind: 'unknown',
        source: 'The goat chart of 2006 gives 4 days, less than FARAD gives for half the dose: ask the vet',
      },
      printed: [{ presentationId: 'fenbendazole-100', ml: 1.1, per: 25, unit: 'lb' }],
      notes: [VET_ONLY],
    },
    {
      id: 'fenbendazole-sheep',
      species: 'sheep',
      use: 'extra-label',
      route: 'oral drench',
      purpose: null,
      presentationIds: null,
      target: {
        evidence: 'unknown',
        source: 'Not approved for sheep in the US, and no rate for them was read in a source: ask the vet',
      },
      ceiling: null,
      floor: null,
      repeatAfterDays: REPEAT_GUARD,
      topUp: false,
      limits: NO_LIMITS,
      meat: { kind: 'unknown', source: NO_MEAT_SOURCE },
      milk: { kind: 'unknown', source: NO_MILK_SOURCE },
      printed: [],
      notes: [VET_ONLY],
    },
    {
      id: 'fenbendazole-cattle',
      species: 'cattle',
      use: 'label',
      route: 'oral drench',
      purpose: null,
      presentationIds: null,
      target: { value: 5, printedMgPerLb: 2.3, evidence: 'primary', source: `${CFR}, (e)(2)(i)` },
      ceiling: null,
      floor: null,
      repeatAfterDays: {
        value: 28,
        evidence: 'primary',
        source: `${CFR}, (e)(2)(i): may be repeated after 4 to 6 weeks`,
      },
      topUp: false,
      limits: NO_LIMITS,
      meat: { kind: 'days', days: 8, evidence: 'primary', source: FDA_RECORD },
      milk: {
        kind: 'hours',
        hours: 48,
        evidence: 'primary',
        source: 'FDA notice of 2026-01-22: 48 hours; older records contradict each other',
      },
      printed: [
        { presentationId: 'fenbendazole-100', ml: 2.3, per: 100, unit: 'lb' },
        { presentationId: 'fenbendazole-100', ml: 11.5, per: 500, unit: 'lb' },
        { presentationId: 'fenbendazole-100', ml: 23, per: 1000, unit: 'lb' },
        { presentationId: 'fenbendazole-100', ml: 34.5, per: 1500, unit: 'lb' },
      ],
      notes: [{ text: 'Not for calves to be sold as veal', evidence: 'primary', source: FDA_RECORD }],
    },
  ],
  agitate: { how: 'shake', line: { text: 'Shake well before use', evidence: 'primary', source: LABEL } },
  technique: DRENCH_TECHNIQUE,
  handling: [WASH_SPLASHES],
  storage: [WARM],
  refrigerate: false,
  conflicts: [],
  extras: [],
  watch: null,
});

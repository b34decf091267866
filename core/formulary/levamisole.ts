import { NO_LIMITS } from '../medicine/limits.ts';
import { Medicine } from '../medicine/medicine.ts';
import { DRENCH_TECHNIQUE, VET_ONLY, WEAK_ANIMAL } from './common.ts';
import {
  GOAT_CHART,
  IN_THE_TRADE,
  NO_MEAT_SOURCE,
  NO_MILK_SOURCE,
  OWN,
  SHEEP_CHART,
  UK_DATASHEET,
} from './sources.ts';

const FDA_DRENCH = 'FDA freedom-of-information summary, NADA 200-225, 1998-08-27';
const NO_MILK_TOLERANCE = '21 CFR 556.350 (undated copy): no milk tolerance is set';
const AJVR = 'Study of young goats, AJVR 1990, abstract in a library record';
const ANGORA = 'Report on levamisole poisoning of Angora goats, 2017-04-18';
const REPEAT = {
  value: 14,
  evidence: 'primary',
  source: `${FDA_DRENCH}: may be needed again at 2 to 4 weeks`,
} as const;

/**
 * Levamisole hydrochloride soluble drench powder, in the packet of 52 g with 46.8 g of active.
 *
 * Of all dewormers it has the least room between dose and poison. Milk times for goats and slaughter times for cattle
 * were not read in a source, so they are unknown, which is not zero.
 */
export const LEVAMISOLE: Medicine = Medicine.parse({
  id: 'levamisole',
  name: 'Levamisole',
  active: 'levamisole hydrochloride',
  group: 'imidazothiazole',
  presentations: [
    {
      form: 'powder',
      id: 'levamisole-52g',
      grossGrams: {
        value: 52,
        evidence: 'secondary',
        source: `Packet named by its gross mass; ${GOAT_CHART}`,
      },
      activeGrams: {
        value: 46.8,
        evidence: 'primary',
        source: '21 CFR 520.1242a(a), eCFR text current 2026-04-05',
      },
      volumePerGram: {
        value: 0.8,
        low: 0.7,
        high: 0.88,
        evidence: 'estimate',
        source:
          'Partial molar volumes of comparable hydrochlorides, J. Mol. Liq. 10.1016/j.molliq.2011.09.024',
      },
      madeUpToMl: {
        value: 946.352946,
        named: { amount: 1, unit: 'US quart' },
        evidence: 'secondary',
        source: `${SHEEP_CHART}: one packet, one US quart. The packet in hand wins`,
      },
      printedMgPerMl: 49.6,
      activeUncertainty: {
        value: 0.003,
        evidence: 'estimate',
        source: 'Assay within 0.5 % taken as rectangular; the packet states none',
      },
      jugLifeHours: {
        value: 12,
        evidence: 'own-guard',
        source: `${OWN}: use a jug the day it is mixed unless the packet says otherwise`,
      },
    },
  ],
  regimens: [
    {
      id: 'levamisole-goat',
      species: 'goat',
      use: 'extra-label',
      route: 'oral drench',
      purpose: null,
      presentationIds: null,
      target: { value: 12, evidence: 'secondary', source: `${GOAT_CHART}: 3 mL of 44.7 mg/mL for 25 lb` },
      ceiling: {
        value: 18,
        evidence: 'own-guard',
        source: `${OWN}: 1.5 times the target; first signs in goats at 23.76 mg/kg (${AJVR})`,
      },
      floor: null,
      repeatAfterDays: REPEAT,
      topUp: false,
      limits: NO_LIMITS,
      meat: { kind: 'days', days: 4, evidence: 'secondary', source: `${GOAT_CHART}: 4 days` },
      milk: { kind: 'unknown', source: NO_MILK_SOURCE },
      printed: [],
      notes: [VET_ONLY, WEAK_ANIMAL],
    },
    {
      id: 'levamisole-sheep',
      species: 'sheep',
      use: 'label',
      route: 'oral drench',
      purpose: null,
      presentationIds: null,
      target: { value: 8, evidence: 'primary', source: `${FDA_DRENCH}: 1 mL of 181.5 mg/mL for 50 lb` },
      ceiling: { value: 12, evidence: 'own-guard', source: `${OWN}: 1.5 times the target` },
      floor: null,
      repeatAfterDays: REPEAT,
      topUp: false,
      limits: NO_LIMITS,
      meat: { kind: 'days', days: 3, evidence: 'secondary', source: `${SHEEP_CHART}: 3 days` },
      milk: { kind: 'not-for-people', source: NO_MILK_TOLERANCE },
      printed: [],
      notes: [WEAK_ANIMAL],
    },
    {
      id: 'levamisole-cattle',
      species: 'cattle',
      use: 'label',
      route: 'oral drench',
      purpose: null,
      presentationIds: null,
      target: { value: 8, evidence: 'primary', source: `${FDA_DRENCH}: 2 mL of 181.5 mg/mL for 100 lb` },
      ceiling: { value: 12, evidence: 'own-guard', source: `${OWN}: 1.5 times the target` },
      floor: null,
      repeatAfterDays: REPEAT,
      topUp: false,
      limits: NO_LIMITS,
      meat: { kind: 'unknown', source: `${NO_MEAT_SOURCE}. The drench rule itself was not read` },
      milk: { kind: 'not-for-people', source: NO_MILK_TOLERANCE },
      printed: [],
      notes: [WEAK_ANIMAL],
    },
  ],
  agitate: {
    how: 'swirl',
    line: { text: 'A true solution: swirl till clear', evidence: 'common-practice', source: IN_THE_TRADE },
  },
  technique: DRENCH_TECHNIQUE,
  handling: [
    { text: 'Wear gloves', evidence: 'common-practice', source: IN_THE_TRADE },
    { text: 'Do not breathe the powder', evidence: 'common-practice', source: IN_THE_TRADE },
    { text: 'Keep from children and other stock', evidence: 'common-practice', source: IN_THE_TRADE },
    { text: 'Wash off splashes: rarely it harms people’s blood', evidence: 'primary', source: UK_DATASHEET },
  ],
  storage: [],
  refrigerate: false,
  conflicts: [
    {
      group: 'organophosphate',
      days: { value: 14, evidence: 'primary', source: `${UK_DATASHEET}: no organophosphate within 14 days` },
    },
  ],
  extras: [
    {
      medicineId: 'thiamine',
      line: {
        text: 'Thiamine in the same visit, where the vet has directed it',
        evidence: 'secondary',
        source: 'Feed-trade page (undated): deworming is listed among the causes of thiamine deficiency',
      },
    },
  ],
  watch: {
    firstMinutes: { value: 5, evidence: 'secondary', source: `${ANGORA}: signs from 5 to 15 minutes` },
    lastMinutes: {
      value: 63,
      evidence: 'primary',
      source: `${AJVR}: at three times the dose signs began 18 to 63 minutes after it`,
    },
    signs: {
      text: 'Drooling, lip licking, head shaking, trembling, staggering, hyperactivity',
      evidence: 'secondary',
      source: `${AJVR}; parasiticide reference (undated); Australian case report on sheep, 1981`,
    },
    remedy: {
      text: 'Call the vet at once. Keep it quiet, give nothing more',
      evidence: 'primary',
      source:
        'Merck Veterinary Manual, Safety of Anthelmintics, rev. 2014-09: the vet has an antidote for signs',
    },
  },
});

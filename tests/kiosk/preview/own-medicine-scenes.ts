import { isRefused } from '../../../core/formulary/entered.ts';
import { presentationFrom } from '../../../core/formulary/entered-presentation.ts';
import { ruleFrom } from '../../../core/formulary/entered-rule.ts';
import { LEVAMISOLE } from '../../../core/formulary/levamisole.ts';
import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { withAdditions } from '../../../core/medicine/additions.ts';
import { medicineViews } from '../../../server/view/medicine-view.ts';
import { packetViews, regimenViews } from '../../../server/view/regimen-view.ts';
import type { KioskState } from '../../../shared/state.ts';
import { RULE, SMALL_PACKET } from '../../core/make/entered.ts';
import { BASE } from './base-state.ts';
import type { Scene } from './scene.ts';

const SAM = { by: 'Sam', on: '2026-04-14' };
const packet = presentationFrom(LEVAMISOLE, SMALL_PACKET, 'own-levamisole-packet-1', SAM);
const rule = ruleFrom(
  { ...RULE, mgPerKg: 12, mgPerLb: null, use: 'extra-label' },
  'own-levamisole-goat-1',
  SAM,
);
if (isRefused(packet) || isRefused(rule)) throw new Error('the scenes show what can be kept');

/** The barn once a packet and a rule of its own stand beside levamisole. */
export function withOwn(parts: { packet?: boolean; rule?: boolean }, approved: boolean = false): KioskState {
  const { formulary, own, retired } = withAdditions(SHIPPED, [
    ...(parts.packet ? [{ addTo: 'levamisole', presentations: [packet], regimens: [] }] : []),
    ...(parts.rule ? [{ addTo: 'levamisole', presentations: [], regimens: [rule] }] : []),
  ]);
  const approval = {
    regimenId: 'own-levamisole-goat-1',
    figures: null,
    by: 'Sam',
    direction: 'veterinarian',
    vet: 'Dr Yarrow',
    atMs: Date.UTC(2026, 3, 14, 9),
    targetMgPerKg: null,
    meat: null,
    milk: null,
  } as const;
  return {
    ...BASE,
    shed: {
      ...BASE.shed,
      medicines: medicineViews(formulary, own, retired),
      regimens: regimenViews(formulary, approved ? [approval] : []),
      packets: packetViews(formulary),
    },
  };
}

const state = BASE;
const own = withOwn({ packet: true, rule: true });
const named: KioskState = {
  ...BASE,
  shed: { ...BASE.shed, vets: ['Dr Yarrow', 'Dr Sorrel', 'Practice on call'] },
};

/** Taps that enter a number and end it with a unit. */
const keys = (number: string, unit: string): string[] => [
  ...[...number].map((key) => `key-${key === '.' ? 'point' : key}`),
  `unit-${unit}`,
];
const PACKET = [
  ...keys('13', 'g'),
  ...keys('11.7', 'g'),
  'choose-US quart',
  ...keys('1', 'US quart'),
  'instead-none',
  'instead-none',
];
const BOTTLE = [...keys('45.5', 'mg/mL'), ...keys('4.55', '%'), ...keys('250', 'mL'), 'instead-none'];
/** Answers up to the rate. */
const RULE_BEGUN = ['choose-sheep', 'choose-label', 'choose-oral drench'];
const RULE_LIMITS = [
  ...keys('3', 'weeks'),
  ...keys('7', 'days'),
  'instead-not-for-people',
  ...keys('4', 'months'),
  'instead-none',
  ...keys('45', 'days'),
  'instead-none',
  'choose-not-dairy',
];
const RULE_TAPS = [
  ...RULE_BEGUN,
  ...keys('8', 'mg/kg'),
  ...keys('3.63', 'mg/lb'),
  'instead-none',
  'instead-none',
  ...RULE_LIMITS,
];

/** The farm's own packets, bottles and rules, and the veterinarian's name. */
export const OWN_MEDICINE_SCENES: readonly Scene[] = [
  { name: 'own-list', place: 'shed/medicines', state: own },
  { name: 'own-other', place: 'shed/medicines/other', state },
  { name: 'own-none', place: 'shed/medicines/levamisole', state },
  { name: 'own-page', place: 'shed/medicines/levamisole', state: own },
  { name: 'own-packet', place: 'shed/medicines/levamisole/own/own-levamisole-packet-1', state: own },
  { name: 'own-rule', place: 'shed/medicines/levamisole/own/own-levamisole-goat-1', state: own },
  {
    name: 'own-rule-approved',
    place: 'shed/medicines/levamisole/own/own-levamisole-goat-1',
    state: withOwn({ rule: true }, true),
  },
  {
    name: 'own-rule-by-vet',
    place: 'shed/rules/own-levamisole-goat-1',
    state: withOwn({ rule: true }, true),
  },
  { name: 'enter-packet', place: 'shed/medicines/levamisole/packet/gross', state, taps: ['key-1', 'key-3'] },
  {
    name: 'enter-packet-volume',
    place: 'shed/medicines/levamisole/packet/gross',
    state,
    taps: PACKET.slice(0, 8),
  },
  {
    name: 'enter-packet-gross-for-active',
    place: 'shed/medicines/levamisole/packet/gross',
    state,
    taps: [...keys('52', 'g'), ...keys('52', 'g')],
  },
  { name: 'enter-packet-review', place: 'shed/medicines/levamisole/packet/gross', state, taps: PACKET },
  {
    name: 'enter-bottle-twin',
    place: 'shed/medicines/fenbendazole/bottle/strength',
    state,
    taps: BOTTLE.slice(0, 5),
  },
  {
    name: 'enter-bottle-contradicts',
    place: 'shed/medicines/fenbendazole/bottle/strength',
    state,
    taps: [...keys('45.5', 'mg/mL'), ...keys('4.45', '%')],
  },
  { name: 'enter-bottle-review', place: 'shed/medicines/fenbendazole/bottle/strength', state, taps: BOTTLE },
  { name: 'enter-rule', place: 'shed/medicines/levamisole/rule/species', state },
  {
    name: 'enter-rule-route',
    place: 'shed/medicines/levamisole/rule/species',
    state,
    taps: RULE_BEGUN.slice(0, 2),
  },
  {
    name: 'enter-rule-sold',
    place: 'shed/medicines/albendazole/rule/species',
    state,
    taps: RULE_BEGUN.slice(0, 2),
  },
  {
    name: 'enter-rule-rate',
    place: 'shed/medicines/levamisole/rule/species',
    state,
    taps: [...RULE_BEGUN, 'key-8'],
  },
  {
    name: 'enter-rule-contradicts',
    place: 'shed/medicines/levamisole/rule/species',
    state,
    taps: [...RULE_BEGUN, ...keys('0.2', 'mg/kg'), ...keys('0.91', 'mg/lb')],
  },
  {
    name: 'enter-rule-ceiling',
    place: 'shed/medicines/levamisole/rule/species',
    state,
    taps: [...RULE_BEGUN, ...keys('8', 'mg/kg'), 'instead-none'],
  },
  {
    name: 'enter-rule-meat',
    place: 'shed/medicines/levamisole/rule/species',
    state,
    taps: RULE_TAPS.slice(0, RULE_TAPS.indexOf('unit-weeks') + 1),
  },
  {
    name: 'enter-rule-milk-none',
    place: 'shed/medicines/levamisole/rule/milk',
    state,
    taps: keys('0', 'days'),
  },
  {
    name: 'enter-rule-age',
    place: 'shed/medicines/levamisole/rule/species',
    state,
    taps: RULE_TAPS.slice(0, RULE_TAPS.indexOf('instead-not-for-people') + 1),
  },
  {
    name: 'enter-rule-milkers',
    place: 'shed/medicines/levamisole/rule/species',
    state,
    taps: RULE_TAPS.slice(0, -1),
  },
  {
    name: 'enter-rule-begun',
    place: 'shed/medicines/levamisole/rule/species',
    state,
    taps: [...RULE_BEGUN, 'back'],
  },
  { name: 'enter-rule-review', place: 'shed/medicines/levamisole/rule/species', state, taps: RULE_TAPS },
  {
    name: 'enter-rule-far',
    place: 'shed/medicines/levamisole/rule/species',
    state,
    taps: [
      ...RULE_BEGUN,
      ...keys('80', 'mg/kg'),
      'instead-none',
      'instead-none',
      'instead-none',
      ...RULE_LIMITS,
    ],
  },
  {
    name: 'enter-rule-change',
    place: 'shed/medicines/levamisole/rule/species',
    state,
    taps: [...RULE_TAPS, 'review-change'],
  },
  {
    name: 'vet-none-yet',
    place: 'shed/rules/levamisole-goat/approve',
    state,
    taps: ['approve-by-vet'],
  },
  { name: 'vet-pick', place: 'shed/rules/levamisole-goat/approve', state: named, taps: ['approve-by-vet'] },
  {
    name: 'vet-letters',
    place: 'shed/rules/levamisole-goat/approve',
    state: named,
    taps: ['approve-by-vet', 'vet-new', 'letter-D', 'letters-K–T', 'letter-R', 'letters-U–Z', 'letter-space'],
  },
];

import { Medicine } from './formulary.ts';

const GOAT_CHART = 'Goat anthelmintic chart, July 2006 (Univ. Georgia, Univ. Kentucky), read in a copy';
const FDA_DRENCH = 'FDA freedom-of-information summary, NADA 200-225, 1998-08-27';
const OWN = 'Set by this project as a guard; no source gives one';

/**
 * Levamisole hydrochloride soluble drench powder, in the packet of 52 g with 46.8 g of active.
 *
 * Every regimen ships unapproved: a person approves it at Shed before the kiosk offers a dose. Milk times for goats
 * were not read in a source, so they are unknown, which is not zero.
 */
export const LEVAMISOLE: Medicine = Medicine.parse({
  id: 'levamisole',
  name: 'Levamisole',
  active: 'levamisole hydrochloride',
  packets: [
    {
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
        evidence: 'secondary',
        source:
          'Consortium sheep chart, read in a reprint: one packet, one US quart. The packet in hand wins',
      },
      activeUncertainty: {
        value: 0.003,
        evidence: 'estimate',
        source: 'Assay within 0.5 % taken as rectangular; the packet states none',
      },
    },
  ],
  regimens: [
    {
      id: 'levamisole-goat',
      species: 'goat',
      use: 'extra-label',
      route: 'oral drench',
      target: { value: 12, evidence: 'secondary', source: `${GOAT_CHART}: 3 mL of 44.7 mg/mL for 25 lb` },
      ceiling: {
        value: 18,
        evidence: 'own-guard',
        source: `${OWN}: 1.5 times the target; first signs in goats at 23.76 mg/kg (AJVR 1990, abstract)`,
      },
      floor: null,
      repeatAfterDays: {
        value: 14,
        evidence: 'primary',
        source: `${FDA_DRENCH}: may be needed again at 2 to 4 weeks`,
      },
      meat: { kind: 'hours', hours: 96, evidence: 'secondary', source: `${GOAT_CHART}: 4 days` },
      milk: {
        kind: 'unknown',
        source: 'No source read. Ask the vet: the milk is not for people until a time is given',
      },
      notes: [
        'Not labelled for goats: only on a veterinarian’s direction',
        'A weak or dried-out animal: call the vet first',
      ],
    },
    {
      id: 'levamisole-sheep',
      species: 'sheep',
      use: 'label',
      route: 'oral drench',
      target: { value: 8, evidence: 'primary', source: `${FDA_DRENCH}: 1 mL of 181.5 mg/mL for 50 lb` },
      ceiling: { value: 12, evidence: 'own-guard', source: `${OWN}: 1.5 times the target` },
      floor: null,
      repeatAfterDays: {
        value: 14,
        evidence: 'primary',
        source: `${FDA_DRENCH}: may be needed again at 2 to 4 weeks`,
      },
      meat: {
        kind: 'hours',
        hours: 72,
        evidence: 'secondary',
        source: 'Consortium sheep chart, read in a reprint: 3 days',
      },
      milk: { kind: 'not-for-people', source: '21 CFR 556.350: no milk tolerance is set' },
      notes: ['A weak or dried-out animal: call the vet first'],
    },
  ],
  agitate: 'swirl',
  jugLifeHours: {
    value: 12,
    evidence: 'own-guard',
    source: `${OWN}: use a jug the day it is mixed unless the packet says otherwise`,
  },
  handling: [
    'Wear gloves',
    'Do not breathe the powder',
    'Keep from children and other stock',
    'Wash off splashes',
  ],
});

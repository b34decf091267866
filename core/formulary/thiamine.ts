import { NO_LIMITS } from '../medicine/limits.ts';
import { Medicine } from '../medicine/medicine.ts';
import type { Regimen } from '../medicine/regimen.ts';
import { VET_ONLY } from './common.ts';
import { IN_THE_TRADE, NO_MEAT_SOURCE, NO_MILK_SOURCE, OWN } from './sources.ts';

const DAILY = { value: 1, evidence: 'own-guard', source: OWN } as const;
/** Four times a day is a page on goats; of the others no such page was read, so a day stands. */
const REPEAT = {
  goat: {
    value: 0.25,
    evidence: 'secondary',
    source:
      'Goat extension page on polioencephalomalacia (goats.extension.org, undated): three to four times a day',
  },
  sheep: DAILY,
  cattle: DAILY,
} as const;

/** The rule for one species: nothing but its use is known, so everything else is the veterinarian's. */
function asTheVetDirects(species: Regimen['species']) {
  return {
    id: `thiamine-${species}`,
    species,
    use: 'extra-label',
    route: 'as the vet directs',
    purpose: null,
    presentationIds: null,
    target: {
      evidence: 'unknown',
      source:
        'A goat extension page gives 0.25 mL for 10 lb without a strength: a fivefold span. Ask the vet',
    },
    ceiling: null,
    floor: null,
    repeatAfterDays: REPEAT[species],
    topUp: false,
    limits: NO_LIMITS,
    meat: { kind: 'unknown', source: NO_MEAT_SOURCE },
    milk: { kind: 'unknown', source: NO_MILK_SOURCE },
    printed: [],
    notes: [VET_ONLY],
  };
}

/**
 * Thiamine (vitamin B1), supportive.
 *
 * Bottles come in strengths five times apart and no rate was read in a source, so neither ships: the strength is
 * entered at Shed from the bottle in hand, the rate on the veterinarian's direction.
 */
export const THIAMINE: Medicine = Medicine.parse({
  id: 'thiamine',
  name: 'Thiamine (B1)',
  active: 'thiamine',
  group: 'vitamin',
  presentations: [],
  regimens: [asTheVetDirects('goat'), asTheVetDirects('sheep'), asTheVetDirects('cattle')],
  agitate: {
    how: 'swirl',
    line: { text: 'Turn the bottle over once or twice', evidence: 'common-practice', source: IN_THE_TRADE },
  },
  technique: {
    how: 'as-the-vet-showed',
    line: {
      text: 'As the vet showed you: it is not a drench',
      evidence: 'common-practice',
      source: IN_THE_TRADE,
    },
  },
  handling: [{ text: 'A clean needle each time', evidence: 'common-practice', source: IN_THE_TRADE }],
  storage: [],
  refrigerate: false,
  conflicts: [],
  extras: [],
  watch: null,
});

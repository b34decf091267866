import type { EnteredRule, EnteredTime } from '../../core/formulary/entered-rule.ts';
import {
  ceilingTooLow,
  floorTooHigh,
  keepsNothingBack,
  ratesDisagree,
} from '../../core/medicine/contradictions.ts';
import { farFromKnown } from '../../core/medicine/far-rate.ts';
import type { MedicineView } from '../../shared/own-medicine.ts';
import type { RegimenView } from '../../shared/shed.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';
import {
  IN_DAYS,
  IN_KG,
  IN_MG_PER_KG,
  MILKERS,
  ROUTES,
  ruleQuestions,
  SPECIES,
  USES,
} from './rule-questions.ts';
import { type Contradiction, chosen, type Draft, inUnit, keyed, keyedIn, type Sheet } from './sheet.ts';

/** A rule of one medicine: what is asked, what contradicts itself, what it comes to. */
export function ruleSheet(
  medicine: MedicineView,
  regimens: readonly RegimenView[],
  words: Words,
  show: Show,
): Sheet<EnteredRule> {
  const questions = (draft: Draft) => ruleQuestions(draft, medicine, words, show);
  return {
    questions,
    contradiction: (draft) =>
      timeContradiction(draft, 'meat') ?? timeContradiction(draft, 'milk') ?? ratesIn(draft),

    warning(draft) {
      const mine = inUnit(draft, 'target', IN_MG_PER_KG);
      const known = regimens
        .filter((rule) => rule.medicine === medicine.name && rule.species === draft['species'])
        .flatMap(({ figures }) => figures.find((figure) => figure.label === 'target')?.value ?? []);
      const far = mine === null ? null : farFromKnown(mine, known);
      return mine === null || far === null ? null : words.medicines.farRate(show.rate(mine), show.rate(far));
    },

    entered(draft) {
      const species = chosen(draft, 'species', SPECIES);
      const use = chosen(draft, 'use', USES);
      const route = chosen(draft, 'route', ROUTES);
      const milkers = chosen(draft, 'milkers', MILKERS);
      const meat = timeIn(draft, 'meat');
      const milk = timeIn(draft, 'milk');
      if (questions(draft).some(({ id }) => draft[id] === undefined)) return null;
      if (species === null || use === null || route === null || milkers === null) return null;
      if (meat === null || milk === null) return null;
      const afterBredDays = inUnit(draft, 'bred', IN_DAYS);
      return {
        species,
        use,
        presentationId: medicine.presentations.find(({ id }) => id === draft['sold'])?.id ?? null,
        route,
        ...bothRates(draft),
        ceiling: inUnit(draft, 'ceiling', IN_MG_PER_KG),
        floor: inUnit(draft, 'floor', IN_MG_PER_KG),
        repeatDays: inUnit(draft, 'repeat', IN_DAYS),
        meat,
        milk,
        minAgeDays: inUnit(draft, 'min-age', IN_DAYS),
        minWeightKg: inUnit(draft, 'min-weight', IN_KG),
        pregnancy:
          afterBredDays === null
            ? null
            : { afterBredDays, afterMalesDays: inUnit(draft, 'males', IN_DAYS) ?? afterBredDays },
        milkers,
      };
    },
  };
}

function bothRates(draft: Draft): Pick<EnteredRule, 'mgPerKg' | 'mgPerLb'> {
  const printed = ['target', 'target-twin'];
  return { mgPerKg: keyedIn(draft, printed, 'mg/kg'), mgPerLb: keyedIn(draft, printed, 'mg/lb') };
}

function ratesIn(draft: Draft): Contradiction | null {
  const wrong = (says: string | null, twin: string) =>
    says === null ? null : { between: ['target', twin], says };
  const { mgPerKg, mgPerLb } = bothRates(draft);
  const target = inUnit(draft, 'target', IN_MG_PER_KG);
  const ceiling = inUnit(draft, 'ceiling', IN_MG_PER_KG);
  const floor = inUnit(draft, 'floor', IN_MG_PER_KG);
  return (
    (mgPerKg === null || mgPerLb === null ? null : wrong(ratesDisagree(mgPerKg, mgPerLb), 'target-twin')) ??
    (ceiling === null || target === null ? null : wrong(ceilingTooLow(ceiling, target), 'ceiling')) ??
    (floor === null || target === null ? null : wrong(floorTooHigh(floor, target), 'floor'))
  );
}

function timeContradiction(draft: Draft, id: 'meat' | 'milk'): Contradiction | null {
  const count = keyed(draft, id)?.count;
  const says = count === undefined ? null : keepsNothingBack(count);
  return says === null ? null : { between: [id], says };
}

function timeIn(draft: Draft, id: 'meat' | 'milk'): EnteredTime | null {
  const answer = draft[id];
  if (answer === 'unknown' || answer === 'not-for-people') return { kind: answer };
  const time = keyed(draft, id);
  if (time === null) return null;
  return time.unit === 'hours' ? { kind: 'hours', hours: time.count } : { kind: 'days', days: time.count };
}

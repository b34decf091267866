import type { AnimalView } from '../../shared/animal.ts';
import type { WormRuleView } from '../../shared/worm-rules.ts';

type Rule = WormRuleView['rule'];

/** English words of the thresholds of whom to treat. */
export const enWormRules = {
  door: 'Thresholds',
  title: 'When is one treated?',
  of: {
    female: 'Females',
    male: 'Males',
    castrate: 'Castrates',
    young: 'Young',
  } satisfies Record<AnimalView['class'], string>,
  season: { high: 'High season', low: 'Low season' },
  rule: {
    treatEyelid: 'Treat by eyelid',
    treatBody: 'Treat by body',
    lookSoiling: 'Look again by soiling',
    gainShare: 'Look again by gain',
    lookAgainDays: 'Look again after',
    colourRecoveryDays: 'Lids recover for',
    scoresLastDays: 'A score counts for',
  } satisfies Record<Rule, string>,
  value: {
    treatEyelid: (step: string) => `${step} and paler`,
    treatBody: (step: string) => `${step} and thinner`,
    lookSoiling: (step: string) => `${step} and worse`,
    gainShare: (percent: string) => `under ${percent} %`,
    lookAgainDays: (days: string) => `${days} days`,
    colourRecoveryDays: (days: string) => `${days} days`,
    scoresLastDays: (days: string) => `${days} days`,
  } satisfies Record<Rule, (shown: string) => string>,
  ask: {
    treatEyelid: 'From which eyelid on is one treated?',
    treatBody: 'From which body condition down?',
    lookSoiling: 'From which soiling on?',
    gainShare: 'Percent of the gain of its kind',
    lookAgainDays: 'Days until the next look',
    colourRecoveryDays: 'Days a lid needs to redden',
    scoresLastDays: 'Days a score counts',
  } satisfies Record<Rule, string>,
  within: (least: string, most: string) => `From ${least} to ${most}`,
  herd: 'whole herd',
  whose: (value: string) => `${value}: on whose word?`,
  word: { farm: 'Our own', veterinarian: 'The vet’s' },
  forThese: (kind: string, season: string) => `${kind}, ${season.toLowerCase()}`,
  forAll: 'every class, all year',
  ships: (source: string) => `It ships as: ${source}`,
  change: 'Change',
  asShipped: (value: string) => `As shipped: ${value}`,
  marked: { farm: 'OUR OWN', veterinarian: 'VET’S' },
  since: (day: string) => `since ${day}`,
};

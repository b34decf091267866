import { RULE_CLASSES, RULE_SEASONS } from '../../core/worms/farm-rules.ts';
import type { AnimalView } from '../../shared/animal.ts';
import type { WormRulesView, WormRuleView } from '../../shared/worm-rules.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';

/** A class of animals in a season, whose thresholds are looked at. */
export interface RuleGroup {
  readonly season: WormRulesView['season'];
  readonly class: AnimalView['class'];
}

/** The group a path names; what it leaves open is the season now and the females. */
export function groupIn(path: readonly string[], season: RuleGroup['season']): RuleGroup {
  return {
    season: RULE_SEASONS.find((each) => each === path[0]) ?? season,
    class: RULE_CLASSES.find((each) => each === path[1]) ?? 'female',
  };
}

/** The class shown after one, round and round. */
export function nextClass(kind: AnimalView['class']): AnimalView['class'] {
  return RULE_CLASSES[(RULE_CLASSES.indexOf(kind) + 1) % RULE_CLASSES.length] ?? 'female';
}

/** The thresholds of a group, the herd's own last. */
export function rulesOf(rules: readonly WormRuleView[], group: RuleGroup): WormRuleView[] {
  return rules.filter(
    ({ season, class: kind }) => season === null || (season === group.season && kind === group.class),
  );
}

/** A value of a threshold in words, such as "4 and paler". */
export function valueWords(rule: WormRuleView['rule'], value: number, words: Words, show: Show): string {
  return words.wormRules.value[rule](show.number(rule === 'gainShare' ? 100 * value : value, 1));
}

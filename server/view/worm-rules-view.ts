import {
  CLASS_RULE_NAMES,
  HERD_RULE_NAMES,
  type OwnThreshold,
  placesOf,
  rulesInForce,
  samePlace,
  thresholdAt,
} from '../../core/worms/farm-rules.ts';
import { SHIPPED_RULES } from '../../core/worms/treat-rules.ts';
import type { WormRulesView } from '../../shared/worm-rules.ts';
import type { Memory } from '../barn/memory.ts';
import { rfc3339 } from './times.ts';

/** Every threshold of whom to treat in force, those of the classes first. */
export function wormRulesView({
  wormRules,
  settings,
}: Pick<Memory, 'wormRules' | 'settings'>): WormRulesView {
  const inForce = rulesInForce(wormRules);
  const places = [...CLASS_RULE_NAMES, ...HERD_RULE_NAMES].flatMap((rule) =>
    placesOf({ rule, season: null, class: null }),
  );
  return {
    season: settings.wormSeason,
    rules: places.map((place) => {
      const { value, evidence, source } = thresholdAt(inForce, place);
      const shipped = thresholdAt(SHIPPED_RULES, place);
      const own: OwnThreshold | undefined = wormRules.find((each) => samePlace(each, place));
      return {
        ...place,
        value,
        evidence,
        source,
        setAt: own === undefined ? null : rfc3339(own.atMs),
        shipped: { value: shipped.value, source: shipped.source },
      };
    }),
  };
}

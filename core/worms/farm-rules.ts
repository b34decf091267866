import type { AnimalClass } from '../herd/animal.ts';
import {
  type ClassRules,
  SHIPPED_RULES,
  type Threshold,
  type TreatRules,
  type WormSeason,
} from './treat-rules.ts';

/** Thresholds a farm may set for a class of animal in a season. */
export const CLASS_RULE_NAMES = [
  'treatEyelid',
  'treatBody',
  'lookSoiling',
  'gainShare',
  'lookAgainDays',
] as const satisfies readonly (keyof ClassRules)[];

/** Thresholds that are the same for the whole herd, all year. */
export const HERD_RULE_NAMES = [
  'colourRecoveryDays',
  'scoresLastDays',
] as const satisfies readonly (keyof TreatRules)[];

/** One threshold by its name. */
export type RuleName = (typeof CLASS_RULE_NAMES)[number] | (typeof HERD_RULE_NAMES)[number];

/** Classes and seasons, in the order they are shown. */
export const RULE_CLASSES: readonly AnimalClass[] = ['female', 'male', 'castrate', 'young'];
export const RULE_SEASONS: readonly WormSeason[] = ['high', 'low'];

/** On whose word a threshold was set. */
export type RuleWord = 'farm' | 'veterinarian';

/** Where a threshold holds; class and season are `null` where it is the herd's. */
export interface RulePlace {
  readonly rule: RuleName;
  readonly season: WormSeason | null;
  readonly class: AnimalClass | null;
}

/** A threshold a farm set in place of the shipped one. */
export interface OwnThreshold extends RulePlace {
  readonly value: number;
  readonly word: RuleWord;
  readonly by: string;
  readonly atMs: number;
}

/** What a threshold may be: whole steps of `step` from `least` to `most`, both included (our own guards). */
export interface RuleBounds {
  readonly least: number;
  readonly most: number;
  readonly step: number;
}

/**
 * Bounds of each threshold: steps of its score, days, or part of the mob's mean gain.
 *
 * An eyelid of 1 or a body of 4 would treat the whole herd at every look, which breeds resistance.
 */
export const RULE_BOUNDS: Readonly<Record<RuleName, RuleBounds>> = {
  treatEyelid: { least: 2, most: 5, step: 1 },
  treatBody: { least: 1, most: 3.5, step: 0.5 },
  lookSoiling: { least: 1, most: 5, step: 1 },
  gainShare: { least: 0.1, most: 1.2, step: 0.01 },
  lookAgainDays: { least: 1, most: 90, step: 1 },
  colourRecoveryDays: { least: 0, most: 60, step: 1 },
  scoresLastDays: { least: 1, most: 60, step: 1 },
};

/** Whether a threshold is the herd's, the same for every class and season. */
export function isHerdRule(rule: RuleName): rule is (typeof HERD_RULE_NAMES)[number] {
  return HERD_RULE_NAMES.some((name) => name === rule);
}

/** How far from a step a value may be by the arithmetic of floating point, in steps. */
const STEP_SLACK = 1e-6;

/** Whether a threshold may be set to a value: within its bounds and on one of its steps. */
export function mayBe(rule: RuleName, value: number): boolean {
  const { least, most, step } = RULE_BOUNDS[rule];
  const steps = value / step;
  // A hundredth added a hundred times is not quite one.
  const inBounds = steps >= least / step - STEP_SLACK && steps <= most / step + STEP_SLACK;
  return inBounds && Math.abs(steps - Math.round(steps)) < STEP_SLACK;
}

/** All places a threshold stands in, narrowed by a class or a season where one is given. */
export function placesOf({ rule, season, class: kind }: RulePlace): RulePlace[] {
  if (isHerdRule(rule)) return [{ rule, season: null, class: null }];
  return RULE_SEASONS.filter((each) => season === null || each === season).flatMap((inSeason) =>
    RULE_CLASSES.filter((each) => kind === null || each === kind).map((ofClass) => ({
      rule,
      season: inSeason,
      class: ofClass,
    })),
  );
}

/** Whether two thresholds stand in the same place. */
export function samePlace(a: RulePlace, b: RulePlace): boolean {
  return a.rule === b.rule && a.season === b.season && a.class === b.class;
}

/** The threshold that holds in a place by a set of rules. */
export function thresholdAt(rules: TreatRules, { rule, season, class: kind }: RulePlace): Threshold<number> {
  return isHerdRule(rule) ? rules[rule] : rules.byClass[season ?? 'high'][kind ?? 'female'][rule];
}

const WORD: Readonly<Record<RuleWord, string>> = {
  farm: 'Set by this farm',
  veterinarian: 'Set on the veterinarian’s word',
};

/** The rules in force: those shipped, with the farm's own in their places. One out of its bounds is left out. */
export function rulesInForce(own: readonly OwnThreshold[], shipped: TreatRules = SHIPPED_RULES): TreatRules {
  const inForce = <T extends number>(place: RulePlace, otherwise: Threshold<T>): Threshold<T> => {
    const set = own.find((each) => samePlace(each, place) && mayBe(each.rule, each.value));
    if (set === undefined) return otherwise;
    return { value: set.value as T, evidence: set.word, source: `${WORD[set.word]}: ${set.by}` };
  };
  const classRules = (season: WormSeason, kind: AnimalClass): ClassRules => {
    const rules = shipped.byClass[season][kind];
    const at = (rule: RuleName): RulePlace => ({ rule, season, class: kind });
    return {
      treatEyelid: inForce(at('treatEyelid'), rules.treatEyelid),
      treatBody: inForce(at('treatBody'), rules.treatBody),
      lookSoiling: inForce(at('lookSoiling'), rules.lookSoiling),
      gainShare: inForce(at('gainShare'), rules.gainShare),
      lookAgainDays: inForce(at('lookAgainDays'), rules.lookAgainDays),
    };
  };
  const bySeason = (season: WormSeason): Record<AnimalClass, ClassRules> => ({
    female: classRules(season, 'female'),
    male: classRules(season, 'male'),
    castrate: classRules(season, 'castrate'),
    young: classRules(season, 'young'),
  });
  const herd = (rule: RuleName): RulePlace => ({ rule, season: null, class: null });
  return {
    byClass: { high: bySeason('high'), low: bySeason('low') },
    colourRecoveryDays: inForce(herd('colourRecoveryDays'), shipped.colourRecoveryDays),
    scoresLastDays: inForce(herd('scoresLastDays'), shipped.scoresLastDays),
  };
}

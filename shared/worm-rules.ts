import { z } from 'zod';
import { CLASS_RULE_NAMES, HERD_RULE_NAMES } from '../core/worms/farm-rules.ts';
import { AnimalClass } from './animal.ts';

/** A threshold of whom to treat, by its name. */
export const RuleNameView = z.enum([...CLASS_RULE_NAMES, ...HERD_RULE_NAMES]);
/** A threshold of whom to treat, by its name. */
export type RuleNameView = z.infer<typeof RuleNameView>;

/** One threshold in force with where it comes from, and what ships in its place. */
export const WormRuleView = z.strictObject({
  rule: RuleNameView,
  /** `null` where it is the herd's, the same all year. */
  season: z.enum(['high', 'low']).nullable(),
  class: AnimalClass.nullable(),
  value: z.number(),
  evidence: z.enum(['published', 'no-source', 'own-guard', 'farm', 'veterinarian']),
  source: z.string(),
  /** RFC 3339: when the farm set it; `null` where it is as shipped. */
  setAt: z.string().nullable(),
  shipped: z.strictObject({ value: z.number(), source: z.string() }),
});
/** One threshold in force. */
export type WormRuleView = z.infer<typeof WormRuleView>;

/** All thresholds of whom to treat: `GET /api/worm-rules`. */
export const WormRulesView = z.strictObject({
  season: z.enum(['high', 'low']),
  rules: z.array(WormRuleView),
});
/** All thresholds of whom to treat. */
export type WormRulesView = z.infer<typeof WormRulesView>;

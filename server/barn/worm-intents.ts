import { isHerdRule, mayBe, placesOf } from '../../core/worms/farm-rules.ts';
import type { Intent, Refusal } from '../../shared/intent.ts';
import type { BarnContext } from './barn-context.ts';

/** Sets a threshold of whom to treat in every place named, or puts it back to what ships. */
export function setWormRule(
  barn: BarnContext,
  { rule, season, class: kind, value, word }: Extract<Intent, { type: 'set-worm-rule' }>,
): Refusal | null {
  if (isHerdRule(rule) && (season !== null || kind !== null)) return 'bad-input';
  if (value !== null && !mayBe(rule, value)) return 'threshold-out-of-range';
  const { memory, store } = barn;
  const said = { value, word, by: memory.settings.person, atMs: Math.round(barn.clock.now().wallMs) };
  for (const place of placesOf({ rule, season, class: kind })) store.wormRules.set(place, said);
  barn.memory = { ...memory, wormRules: store.wormRules.inForce(), herdRevision: memory.herdRevision + 1 };
  return null;
}

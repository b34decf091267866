import type { Intent, Refusal } from '../../shared/intent.ts';
import type { BarnContext } from './barn-context.ts';

/** Keeps that somebody read of an animal dosed at two kiosks. */
export function readApart(
  { store, clock, memory }: BarnContext,
  { one, other }: Extract<Intent, { type: 'read-apart' }>,
): Refusal | null {
  const [first, second] = [one, other].sort();
  const pair = store.apart.unseen().find((each) => each.one === first && each.other === second);
  if (pair === undefined) return 'no-such-alarm';
  store.apart.seen(pair, Math.round(clock.now().wallMs), memory.settings.person);
  return null;
}

import { BODY_CONDITIONS, EYELIDS, SOILINGS } from '../../core/worms/scores.ts';
import { hasEyelidScore } from '../../core/worms/treat-rules.ts';
import type { AnimalView } from '../../shared/animal.ts';
import type { ScoredView } from '../../shared/herd-intents.ts';

/** One sign that is scored. */
export type Sign = keyof ScoredView;

/** Nothing looked at yet. */
export const NOTHING_SCORED: ScoredView = { eyelid: null, body: null, soiling: null, jaw: null, coat: null };

/** The steps of each sign, in the order they are shown. */
export const STEPS = {
  eyelid: EYELIDS,
  body: BODY_CONDITIONS,
  soiling: SOILINGS,
  jaw: ['none', 'swollen'],
  coat: ['smooth', 'rough'],
} as const;

/** The signs that are looked at in a species, in the order they are asked. */
export function signsOf(species: AnimalView['species']): Sign[] {
  const all: readonly Sign[] = ['eyelid', 'body', 'soiling', 'jaw', 'coat'];
  return all.filter((sign) =>
    sign === 'eyelid' ? hasEyelidScore(species) : sign !== 'coat' || species === 'goat',
  );
}

/** The sign to ask about after one was answered: the next not yet scored, else the same. */
export function nextSign(signs: readonly Sign[], after: Sign, scored: ScoredView): Sign {
  const at = signs.indexOf(after);
  return [...signs.slice(at + 1), ...signs.slice(0, at)].find((sign) => scored[sign] === null) ?? after;
}

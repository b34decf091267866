import type { AnimalView } from '../../shared/animal.ts';

/** What is known so far of an animal being enrolled; the first thing missing is the next question. */
export interface Enrolling {
  readonly species: AnimalView['species'] | null;
  readonly class: AnimalView['class'] | null;
  readonly inMilk: boolean | null;
  readonly name: string | null;
}

/** Nothing known yet. */
export const NOBODY: Enrolling = { species: null, class: null, inMilk: null, name: null };

/** The question to put next; `tag` comes last and only ends the questions. */
export type EnrolQuestion = 'species' | 'class' | 'milk' | 'number' | 'tag';

/** The next question; milk is asked of grown females alone. */
export function nextQuestion(animal: Enrolling): EnrolQuestion {
  if (animal.species === null) return 'species';
  if (animal.class === null) return 'class';
  if (animal.class === 'female' && animal.inMilk === null) return 'milk';
  return animal.name === null ? 'number' : 'tag';
}

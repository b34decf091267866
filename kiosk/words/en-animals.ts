import type { Advice } from '../../shared/animal.ts';

/** English words of the animals, their scores and whom to treat. */
export const enAnimals = {
  door: 'Animals',
  here: (count: number) => `${count} on the farm`,
  nobody: 'No animal yet',
  newTag: (tail: string) => `Tag …${tail} is new here`,
  enrolIt: 'Enrol it',
  lostTag: (tail: string, names: string) => `Tag …${tail} was lost by ${names}`,
  itIs: (name: string) => `It is ${name}`,
  pickIt: 'See them',
  twice: 'number twice',
  twiceTitle: 'Two have that number: which?',
  score: 'Score',
  year: 'Year',
  month: 'Month',
  scoreIt: 'Score it first',
  toTreat: (count: number) => (count === 0 ? 'nobody for now' : `${count} to treat`),
  tile: { treat: 'treat', leave: 'leave', 'look-again': 'look again' } satisfies Record<Advice, string>,
};

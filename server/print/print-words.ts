import type { Species } from '../../core/herd/animal.ts';
import type { Medicine } from '../../core/medicine/medicine.ts';

/** What stands on every label and table, in English. */
export const PRINT_WORDS = {
  jug: (number: number) => `Jug ${number}`,
  mixed: (when: string, by: string) => `Mixed ${when} by ${by}`,
  undated: 'The clock was not set when it was mixed: go by the day written on the jug.',
  useBy: (when: string) => `Use by ${when}`,
  made: (volume: string) => `${volume} made`,
  poured: 'POURED AWAY: this label is of a jug that is no more.',
  conflict: (days: number) =>
    `No organophosphate within ${days} days of it, before or after: no dip, pour-on or collar of that kind`,
  agitate: { swirl: 'Swirl before each draw', shake: 'Shake before each draw' } satisfies Record<
    Medicine['agitate']['how'],
    string
  >,
  species: { goat: 'Goats', sheep: 'Sheep', cattle: 'Cattle' } satisfies Record<Species, string>,
  tableTitle: (species: string, rate: string, purpose: string | null) =>
    purpose === null ? `${species}: ${rate}` : `${species}, ${purpose}: ${rate}`,
  never: (rate: string) => `never above ${rate}`,
  approved: (by: string, direction: string) => `approved by ${by}, ${direction}`,
  direction: { label: 'on the label', veterinarian: 'on the veterinarian’s word' },
  weight: 'Weight',
  draw: 'Draw',
  syringe: 'Syringe',
  noSyringe: 'no syringe here',
  howToRead: [
    'Weigh the animal: a guess is no weight. Take the row nearest its weight; of two as near, the lighter.',
    'Lighter than the first row or heavier than the last: do not dose by this table.',
    'Ask first: dosed before? in milk? bred not long ago? sick or weak? Never twice in 24 hours.',
    'Write down who got what and when, and enter it when the kiosk runs again.',
  ],
  meat: (when: string) => `Meat: ${when}`,
  milk: (when: string) => `Milk: ${when}`,
  hours: (hours: string) => `kept back ${hours} hours`,
  days: (days: string) => `kept back ${days} days`,
  notForPeople: 'not for people',
  notKnown: 'no time known, ask the vet: not for people until then',
  noRule:
    'No dose rule of this medicine is approved here, so there is no table. Approve one at Shed, then print again.',
  safety: [
    'Doses come from published rules or from what your veterinarian directed. Use outside the label needs a veterinarian.',
    'Local law and the label in hand win. The kiosk is not a vet.',
  ],
  print: 'Print',
  back: 'Back',
  paper: { a6: 'A6 card', roll: '62 mm roll' },
  noJug: 'No such jug',
  noJugDetail: 'The kiosk knows no jug of this id. Go back and open the jug from the list.',
};

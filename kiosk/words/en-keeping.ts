import type { KeepingView } from '../../shared/keeping.ts';

/** English words of how well the records are kept. */
export const enKeeping = {
  door: 'Copies',
  title: 'Copies of the records',
  never: 'no copy yet',
  /** Beside the door of the Shed. */
  missing: 'copies missing',
  last: 'Last copy',
  /** Where a copy lies, by its path. */
  on: (place: string) => `on ${place.split('/').at(-1) ?? place}`,
  to: 'Goes to',
  nowhere: 'nowhere: plug a memory stick in, and one is made every day',
  checked: 'Card checked',
  unchecked: 'not yet',
  overdue: 'The last copy is more than a week old.',
  now: 'Copy now',
  running: 'Copying…',
  trouble: {
    full: 'It is full. Nothing was copied: use another stick.',
    gone: 'It went away while being written to. Plug it in again.',
    'not-written': 'It did not take the copy. Try another stick.',
  } satisfies Record<NonNullable<KeepingView['backup']['trouble']>, string>,
};

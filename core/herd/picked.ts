/** What can be noted of an animal, picked from a list. */
export const ANIMAL_NOTES = [
  'lame',
  'coughing',
  'scouring',
  'off-feed',
  'wound',
  'feet-trimmed',
  'good-mother',
  'vet-saw-it',
  'watch',
] as const;

/** Colours of the mark on a coat, picked from a list; a herd file may bring others. */
export const MARKS = ['red', 'blue', 'green', 'orange', 'purple', 'black'] as const;

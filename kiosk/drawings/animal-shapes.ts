import type { AnimalView } from '../../shared/animal.ts';

/** A silhouette facing left, hoofs on y = 0, in centimetres of a grown animal of `grams`. */
export interface AnimalShape {
  readonly grams: number;
  /** Closed outlines. */
  readonly fills: readonly string[];
  /** Open lines: horns, tails. */
  readonly lines: readonly string[];
}

/** Our own silhouettes. */
export const ANIMAL_SHAPES: Readonly<Record<AnimalView['species'], AnimalShape>> = {
  goat: {
    grams: 60_000,
    fills: [
      'M-36-60c2-4 8-5 14-4 14 3 30 2 44 0 9-1 15 3 17 11 1 7 0 13-1 19l3 10-1 24h-7l-2-22-8-10c-12 3-26 4-38 1l-4 9 1 22h-7l-3-24-4-9c-6-5-8-16-4-27z',
      'M-38-50l-3-28-6-1-12 12c-3 0-6-1-7-4l2-6 17-15c5-3 11-2 14 3l7 24 6 12z',
      'M-61-67l3 11 5-9z',
      'M-42-88c4-1 12 0 15 5-6 2-12 0-15-5z',
    ],
    lines: ['M-46-92c2-9 8-15 17-17', 'M37-60c3-6 8-8 11-13'],
  },
  sheep: {
    grams: 65_000,
    fills: [
      'M-38-54c-2-9 7-15 14-12 4-6 14-7 18-2 5-5 14-4 17 1 6-4 14-1 16 5 8 0 12 8 9 15 4 6 1 15-6 17-1 7-10 10-16 6-6 5-15 4-19-1-5 4-14 4-17-1-8 2-15-3-15-10-6-4-6-13-1-18z',
      'M-26-32h8v32h-6zM-10-28h7l1 28h-6zM14-28h8v28h-6zM26-32h8v32h-6z',
      'M-36-48l-4-16c-6 0-14 3-19 9-3 4-1 8 3 8 7 0 13 1 20-1z',
      'M-42-63c2-4 8-6 12-4 0 4-6 7-12 4z',
    ],
    lines: [],
  },
  cattle: {
    grams: 350_000,
    fills: [
      'M-70-104c8-8 24-8 40-6 26 3 60 2 92 0 10 0 15 7 15 17 1 14-1 24-4 34l3 16-2 43H62l-3-40-11-16c-24 7-52 8-76 3l-5 14 1 39h-12l-5-42-8-14c-11-10-15-30-13-48z',
      'M-66-68l-11-32-8-3-20 12c-5 0-8-3-9-7l4-9 27-15c8-5 18-3 23 4l18 18 8 26z',
      'M-78-122c-6-1-13 1-17 6 6 4 14 1 17-6z',
    ],
    lines: ['M-82-120c-2-8 1-14 7-17', 'M76-104c7 14 8 34 6 54'],
  },
};

/** How much a silhouette is drawn larger or smaller for a weight: lengths go as its cube root; 0.4 to 1.5. */
export function animalScale(grams: number, shape: AnimalShape): number {
  return Math.min(1.5, Math.max(0.4, Math.cbrt(grams / shape.grams)));
}

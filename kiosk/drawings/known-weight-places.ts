import type { CheckedRole, CornerName } from '../../shared/check.ts';

/** Where on a scale something is to stand. */
export type Place = 'middle' | CornerName;

type Point = readonly [x: number, y: number];

/** The centre of what stands at each place, in the drawing of a platform seen from the keeper, its front edge below. */
export const PLACES: Readonly<Record<Place, Point>> = {
  middle: [60, 40],
  'front-left': [22, 58],
  'front-right': [98, 58],
  'back-right': [98, 30],
  'back-left': [22, 30],
};

/** The feet of a platform in the same drawing. */
export const FEET: readonly Point[] = [
  [17, 15],
  [103, 15],
  [103, 63],
  [17, 63],
];

/** The outline of each scale's top in the same drawing. */
export const TOPS: Readonly<
  Record<
    CheckedRole,
    { readonly x: number; readonly y: number; readonly width: number; readonly height: number }
  >
> = {
  platform: { x: 4, y: 3, width: 112, height: 72 },
  bench: { x: 28, y: 7, width: 64, height: 64 },
};

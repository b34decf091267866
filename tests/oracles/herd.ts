/**
 * Days from breeding to birth as printed, read in secondary copies: sheep 142 to 152 (extension handbook), 144 to 151
 * (Missouri Extension), 145 to 150 (Virginia Tech slides), singles 138 to 159; goats 145 to 155 (Missouri Extension);
 * cattle 270 to 289 (slides), Holstein 279.9 of 2,824 births, 262 to 296 (Knott 1932, J Dairy Sci 15:87), breed means 273
 * to 292 (Andersen and Plum 1965).
 */
export const PRINTED_GESTATION = {
  sheep: [
    [142, 152],
    [144, 151],
    [145, 150],
    [138, 159],
  ],
  goat: [[145, 155]],
  cattle: [
    [270, 289],
    [262, 296],
    [273, 292],
  ],
} as const;

/** Tape measures worked through in print, in inches, with the pounds they print. Rounded to whole pounds there. */
export const PRINTED_TAPES = [
  {
    source: 'WSU Extension, Ferry County: sheep and goats; 122.5 before rounding',
    girth: 35,
    length: 30,
    lb: 122.5,
  },
  { source: 'Handbook in the NZ Digital Library: cattle', girth: 60, length: 53, lb: 636 },
] as const;

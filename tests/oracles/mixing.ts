/** A packet in a volume, and the strength a source gives for it or that follows from the two. */
export interface KnownMix {
  readonly activeGrams: number;
  readonly volumeMl: number;
  /** mg/mL, computed from the two. */
  readonly exact: number;
  /** mg/mL as it is printed, and how far the print may be off as a share; `null` where none was read. */
  readonly printed: number | null;
  readonly within: number;
  readonly source: string;
}

const SHEEP_CHART = 'Consortium sheep chart, read in a reprint';
const GOAT_CHART = 'Goat anthelmintic chart, July 2006 (Univ. Georgia, Univ. Kentucky), read in a copy';

/**
 * Levamisole hydrochloride mixed to a mark. Volumes: US quart 946.352946 mL, gallon 3,785.411784 mL, exact.
 *
 * The gallon is common practice, no source: only its arithmetic is checked.
 */
export const KNOWN_MIXES: readonly KnownMix[] = [
  {
    activeGrams: 46.8,
    volumeMl: 946.352946,
    exact: 49.453,
    printed: 49.6,
    // Printed for a quart of 943 mL: grams of water taken for millilitres.
    within: 0.004,
    source: `${SHEEP_CHART}: 46.8 g in a quart, 49.6 mg/mL`,
  },
  {
    activeGrams: 46.8,
    volumeMl: 1892.705892,
    exact: 24.7265,
    printed: null,
    within: 0,
    source: `${SHEEP_CHART}: one packet in two quarts for lambs, and twice the volume`,
  },
  {
    activeGrams: 46.8,
    volumeMl: 1048,
    exact: 44.6565,
    printed: 44.7,
    within: 0.001,
    source: `${GOAT_CHART}: 46.8 g in 1,048 mL, 44.7 mg/mL`,
  },
  {
    activeGrams: 46.8,
    volumeMl: 3785.411784,
    exact: 12.3632,
    printed: null,
    within: 0,
    source: 'Common practice, no source: one packet in a US gallon',
  },
  {
    activeGrams: 544.5,
    volumeMl: 3000,
    exact: 181.5,
    printed: 180,
    within: 0.0084,
    source: 'FDA freedom-of-information summary, NADA 200-225, 1998-08-27: to the 3 L mark, about 180 mg/mL',
  },
];

/**
 * A packet of 52 g added to a quart of water, for a powder that takes up so many millilitres a gram: how much weaker
 * it is than made up to a quart, in percent. Computed from the two volumes.
 */
export const ADDED_TO_A_QUART: readonly (readonly [mlPerGram: number, weakerPercent: number])[] = [
  [0.7, 3.7],
  [0.75, 3.96],
  [0.825, 4.34],
  [0.875, 4.59],
];

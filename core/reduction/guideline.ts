/** The confidence of the 2023 guideline. */
export const GUIDELINE_LEVEL = 0.9;

/** Eggs to be seen before treatment, all animals together: quoted from the 2023 guideline, vetfest.ava.com.au. */
export const EGGS_ASKED_FOR = 90;

/** Ways to give a medicine that the screen has words for, and any other. */
export const TECHNIQUES = ['drench', 'as-the-vet-showed', 'other'] as const;
/** One of {@link TECHNIQUES}. */
export type Technique = (typeof TECHNIQUES)[number];

/** Ways to keep a medicine that the screen has words for, and any other. */
export const KEEPINGS = ['not-warm-or-frozen', 'dark', 'other'] as const;
/** One of {@link KEEPINGS}. */
export type Keeping = (typeof KEEPINGS)[number];

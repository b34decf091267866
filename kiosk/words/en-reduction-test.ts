import type { Show } from './show.ts';

/** English words of what reduction tests found. */
export const enReductionTest = {
  change: (reduction: number, show: Show) =>
    reduction < 0 ? `${show.percent(-reduction)} MORE eggs` : `${show.percent(reduction)} fewer eggs`,
  failed: {
    resistant: (species: string) => `resistant: ${species.toLowerCase()}`,
    'low-resistant': (species: string) => `low resistant: ${species.toLowerCase()}`,
  },
};

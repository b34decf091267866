import type { enReductionTest } from './en-reduction-test.ts';

/** Spanish words of what reduction tests found. */
export const esReductionTest: typeof enReductionTest = {
  change: (reduction, show) =>
    reduction < 0 ? `${show.percent(-reduction)} MÁS huevos` : `${show.percent(reduction)} menos huevos`,
  failed: {
    resistant: (species) => `resistente: ${species.toLowerCase()}`,
    'low-resistant': (species) => `resiste poco: ${species.toLowerCase()}`,
  },
};

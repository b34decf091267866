import type { enReductionTest } from './en-reduction-test.ts';

/** Spanish words of what reduction tests found. */
export const esReductionTest: typeof enReductionTest = {
  change: (reduction, show) =>
    reduction < 0 ? `SUBEN ${show.percent(-reduction)}` : `bajan ${show.percent(reduction)}`,
  failed: {
    resistant: (species) => `resistente: ${species.toLowerCase()}`,
    'low-resistant': (species) => `resiste poco: ${species.toLowerCase()}`,
  },
};

import { enReductionTest } from './en-reduction-test.ts';

/** English words of the worm check that other screens show. */
export const enWormCheck = {
  door: 'Worm check',
  testsDue: (count: number) => (count === 1 ? '1 test due' : `${count} tests due`),
  test: enReductionTest,
};

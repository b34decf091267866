import type { enWormCheck } from './en-worm-check.ts';
import { esReductionTest } from './es-reduction-test.ts';

/** Spanish words of the worm check that other screens show. */
export const esWormCheck: typeof enWormCheck = {
  door: 'Parásitos',
  testsDue: (count) => (count === 1 ? '1 prueba pendiente' : `${count} pruebas pendientes`),
  test: esReductionTest,
};

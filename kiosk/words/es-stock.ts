import type { enStock } from './en-stock.ts';

/** Spanish words of what in stock needs a look. */
export const esStock: typeof enStock = {
  expiredCount: (lots) => (lots === 1 ? '1 lote vencido' : `${lots} lotes vencidos`),
  lastOf: (medicine) => `Último: ${medicine}`,
  lastCount: (medicines) => `${medicines} se acaban`,
};

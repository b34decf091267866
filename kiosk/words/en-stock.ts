/** English words of the stock. */
export const enStock = {
  expiredCount: (lots: number) => (lots === 1 ? '1 lot expired' : `${lots} lots expired`),
  lastOf: (medicine: string) => `Last: ${medicine}`,
  lastCount: (medicines: number) => `${medicines} run out`,
};

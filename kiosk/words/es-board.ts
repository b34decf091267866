import type { enBoard } from './en-board.ts';

/** Spanish words of the board: who may be milked, who may be sold. */
export const esBoard: typeof enBoard = {
  title: 'Leche y venta',
  milk: 'Leche',
  meat: 'Venta',
  allMilk: 'Leche: todas libres',
  allMeat: 'Venta: todos libres',
  milkHeld: (count) => `Leche retenida: ${count}`,
  meatHeld: (count) => `Venta retenida: ${count}`,
  free: 'sí',
  noMilk: '–',
  milkFrom: 'Leche desde',
  meatFrom: 'Venta desde',
  provisional: (when) => `¿${when}?`,
  unknown: 'no: veterinario',
  never: 'nunca',
  vetTitle: (name) => `${name}: días que dio el veterinario`,
  holdVet: 'Mantenga: lo dijo el veterinario',
  nobody: 'Ningún animal aún.',
};

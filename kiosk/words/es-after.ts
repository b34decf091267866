import type { enAfter } from './en-after.ts';

/** Spanish words of what follows a dose. */
export const esAfter: typeof enAfter = {
  open: 'Vigilarlo',
  title: (name) => `Vigile a ${name}`,
  minutes: (first, last) => `Las señales empiezan de ${first} a ${last} minutos después`,
  back: 'Atrás',
  refrigerate: 'Jarra o frasco de vuelta al refrigerador',
  rest: 'Dar el resto',
  extra: (medicine, which) => `${medicine}: ${which}`,
};

import type { enKeeping } from './en-keeping.ts';

/** Spanish of how well the records are kept. */
export const esKeeping: typeof enKeeping = {
  door: 'Copias',
  title: 'Copias de los registros',
  never: 'aún ninguna copia',
  missing: 'faltan copias',
  last: 'Última copia',
  on: (place) => `en ${place.split('/').at(-1) ?? place}`,
  to: 'Va a',
  nowhere: 'ninguna parte: enchufe una memoria USB y habrá una cada día',
  checked: 'Tarjeta revisada',
  unchecked: 'todavía no',
  overdue: 'La última copia tiene más de una semana.',
  now: 'Copiar ahora',
  running: 'Copiando…',
  trouble: {
    full: 'Está llena. No se copió nada: use otra memoria.',
    gone: 'Se fue mientras se escribía. Enchúfela otra vez.',
    'not-written': 'No aceptó la copia. Pruebe otra memoria.',
  },
};

import type { enCorrecting } from './en-correcting.ts';

/** Spanish for saying what really happened to a dose. */
export const esCorrecting: typeof enCorrecting = {
  title: '¿Qué pasó de verdad?',
  notGiven: 'No se dio',
  wrongAnimal: 'Otro animal',
  wrongVolume: 'Otro volumen',
  which: '¿Qué animal la tragó?',
  volume: '¿Cuánto entró?',
  confirm: (what) => `Mantenga: ${what}`,
  stands: 'La primera anotación se queda; esta va a su lado.',
};

import type { enGrowth } from './en-growth.ts';

/** Spanish words of the growth of an animal and its weights. */
export const esGrowth: typeof enGrowth = {
  chart: 'Pesos en el tiempo',
  earlier: 'Antes',
  later: 'Después',
  key: 'Toque un punto. Bandera: dosis, cifra: párpado',
  keyExpected: (name, source) => `Gris: ${name.toLowerCase()}, ${source}`,
  scored: 'evaluado',
  toLookAt: (count) => (count === 1 ? '1 peso en duda' : `${count} pesos en duda`),
  saidTrue: 'confirmado',
  isTrue: 'Está bien',
  isWrong: 'Mantenga: está mal',
  feedDoor: 'Sin comer antes',
  notNoted: 'no anotado',
  hours: (hours) => `${hours} horas`,
  offFeed: (hours) => `${hours} horas sin comer`,
  askFeed: 'Horas sin comer antes',
  atMost: (hours) => `${hours} horas como mucho`,
  thisWeight: 'Solo este peso',
  roundEmpty: 'Todos desde ahora, también',
  roundFed: 'Todos desde ahora, comidos',
  unlike: 'algunos sin comer: no se comparan',
  method: { scale: 'pesado', girth: 'por la cinta', guess: 'a ojo', imported: 'de un archivo' },
  doubt: {
    'outside-species': 'ningún animal de su especie pesa eso',
    'pounds-for-kilograms': '¿libras leídas como kilogramos?',
    'far-from-last': 'lejos del peso anterior',
    'said-wrong': 'marcado como malo: ya no cuenta',
  },
};

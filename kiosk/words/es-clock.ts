import type { enClock } from './en-clock.ts';

/** Spanish for setting the clock. */
export const esClock: typeof enClock = {
  door: 'Reloj',
  setIt: 'Ponerlo en hora',
  whatDay: '¿Qué día es hoy?',
  whatTime: '¿Qué hora es?',
  hour: 'Hora',
  tens: 'Diez minutos',
  minute: 'Minuto',
  itIs: (time) => `Ahora son las ${time}`,
  beforeRecord: 'Un registro tiene fecha posterior. Esa fecha contará como desconocida.',
};

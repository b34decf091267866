import type { enFarm } from './en-farm.ts';

/** Spanish words of the other kiosks of the farm. */
export const esFarm: typeof enFarm = {
  door: 'Otros quioscos',
  title: 'Otros quioscos de la finca',
  demo: 'La demostración no comparte nada: lo que se prueba aquí no es de nadie más.',
  none: 'Este quiosco trabaja solo.',
  how: 'Para compartir el rebaño, enchufe la memoria con la invitación que el centro escribió para este quiosco.',
  found: (name) => `Invitación para «${name}»`,
  at: (hub) => `del centro en ${hub}`,
  join: 'Mantenga para compartir el rebaño',
  unreadable: 'La invitación no se puede leer. Pida al centro una nueva.',
  leave: 'Mantenga para dejar de compartir',
  name: 'Este quiosco',
  others: 'Los otros',
  noOthers: 'ninguno aún',
  last: 'Último intercambio',
  never: 'ninguno desde el arranque',
  toPush: 'Por enviar',
  unknown: 'aún no se sabe',
  records: (count) => (count === 0 ? 'nada' : count === 1 ? '1 registro' : `${count} registros`),
  waiting: (count) =>
    `${count === 1 ? '1 registro' : `${count} registros`} de otros aún no se pueden leer. Actualice el programa de este quiosco.`,
  trouble: {
    unreachable:
      'No se llega al centro. Este quiosco sigue trabajando; todo se envía cuando vuelva la línea.',
    'shut-out': 'El centro ha excluido a este quiosco. Una invitación nueva lo admite otra vez.',
    failing: 'El centro no acepta lo que se le envía. Su registro dice por qué.',
  },
  apart: {
    title: (name) => `${name} recibió dos dosis`,
    why: (active) => `${active}. Ningún quiosco sabía del otro.`,
    here: 'aquí',
    elsewhere: 'en otro quiosco',
    at: (kiosk) => `en ${kiosk}`,
    told: (volume, where, when, by) => `${volume} ${where}, ${when}, ${by}`,
    what: 'Vigile al animal y pregunte al veterinario. Si una no se dio: vea el libro.',
    read: 'Mantenga: lo he leído',
  },
};

import type { enGroup } from './en-group.ts';

/** Spanish for dosing animals that cannot be weighed one by one. */
export const esGroup: typeof enGroup = {
  door: 'Dosis por grupo',
  choose: '¿A quiénes, por sus últimos pesos?',
  all: 'Todos',
  whom: 'Por tratar',
  whomHint: 'por su evaluación',
  pen: (pen) => `Corral ${pen}`,
  title: (at, of, animals) =>
    `${of > 1 ? `Grupo ${at} de ${of}: ` : ''}${animals === 1 ? '1 animal' : `${animals} animales`}`,
  nobody: 'Aquí nadie puede recibir dosis por grupo.',
  heaviest: (name, weight, day) => `Mayor: ${name}, ${weight} (${day}), fija la dosis`,
  lightest: (name, weight, rate, low, high) => `Menor: ${name}, ${weight}, recibe ${rate} (${low} a ${high})`,
  never: (rate) => `nunca más de ${rate}`,
  advice: 'Por últimos pesos: consejo, no oferta. Pesar es más seguro.',
  who: 'Quiénes',
  leave: 'dejar fuera',
  leaveTitle: 'Toque a quien dejar fuera',
  out: (count) => `En ninguno: ${count}`,
  outTitle: 'En ningún grupo, y por qué',
  whyOut: {
    'left-out': 'dejado fuera aquí: toque para incluir',
    'never-weighed': 'nunca pesado',
    'weight-too-old': 'pesado hace más de 30 días',
    'no-dose': 'ninguna jeringa mide su dosis: péselo',
    stop: 'detenido',
  },
  start: 'Dar uno por uno',
  takeInHand: 'Tómela primero',
  other: 'Otro grupo',
  progress: (given, of) => `${given} de ${of} dados`,
  skip: 'Este no',
  given: 'SE DIO',
  undoLast: (name) => `Deshacer ${name}`,
  done: 'El grupo está listo',
  back: 'Atrás',
};

import type { enBottle } from './en-bottle.ts';

/** Spanish words of ready-made liquids. */
export const esBottle: typeof enBottle = {
  open: 'Abrir un frasco',
  which: '¿Qué frasco tiene en la mano?',
  strength: (strength) => `${strength} en su etiqueta`,
  size: '¿Cuánto contiene?',
  expiry: 'Último mes impreso en él',
  expired: 'Ese mes ya pasó: no lo use.',
  month: (month, locale) =>
    new Intl.DateTimeFormat(locale, { month: 'short' }).format(new Date(2026, month - 1, 15)),
  goodFor: (days) => `Abierto, ${days} días como mucho. Manda la etiqueta.`,
  confirm: 'Poner en uso',
  bottleNumber: (number) => `Frasco ${number}`,
  opened: (when) => `abierto ${when}`,
  openedWord: 'abierto',
  isThis: '¿Es ESTE su frasco?',
  yes: (number) => `Sí, frasco ${number}`,
  holdYes: (number) => `Mantenga: frasco ${number}`,
};

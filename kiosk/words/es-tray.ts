import type { enTray } from './en-tray.ts';

/** Spanish for the bench tray of the demo. */
export const esTray: typeof enTray = {
  leadOn: 'Subir',
  walkOff: 'Bajar',
  tag: 'Arete',
  grade: { calm: 'quieto', restless: 'inquieto', violent: 'bravo' },
  placeJug: 'Jarra sí',
  liftJug: 'Jarra no',
  pour: 'Echar',
  dribble: 'Gotear',
  pourStop: 'Alto',
  powder: (packets) => `Polvo ${packets}`,
  fineBench: 'Fina',
  kitchenBench: 'Cocina',
  asAsked: 'Hacer',
  pull: 'sin',
  plug: 'con',
};

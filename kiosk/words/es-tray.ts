import type { enTray } from './en-tray.ts';

/** Spanish for the bench tray of the demo. */
export const esTray: typeof enTray = {
  leadOn: 'Subir',
  walkOff: 'Bajar',
  tag: 'Arete',
  grade: { calm: 'quieto', restless: 'inquieto', violent: 'bravo' },
  placeJug: 'Con jarra',
  liftJug: 'Sin jarra',
  pour: 'Echar…',
  dribble: 'Gotear…',
  pourStop: 'Parar',
  powder: (packets) => `Polvo ${packets}`,
  fineBench: 'Fina',
  kitchenBench: 'Cocina',
  asAsked: 'Hacerlo',
  pull: 'sin',
  plug: 'con',
};

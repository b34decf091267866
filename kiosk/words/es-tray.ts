import type { enTray } from './en-tray.ts';

/** Spanish for the bench tray of the demo. */
export const esTray: typeof enTray = {
  leadOn: 'Subir',
  walkOff: 'Bajar',
  tag: 'Leer arete',
  grade: { calm: 'quieto', restless: 'inquieto', violent: 'bravo' },
  placeJug: 'Poner jarra',
  liftJug: 'Quitar jarra',
  pour: 'Echar (mantenga)',
  dribble: 'Gotear (mantenga)',
  pourStop: 'Parar',
  powder: (packets) => `Polvo ${packets}`,
  fineBench: 'Báscula fina',
  kitchenBench: 'De cocina',
  asAsked: 'Hacer lo pedido',
  pull: 'sacar',
  plug: 'meter',
};

/** English for the bench tray of the demo. */
export const enTray = {
  leadOn: 'Lead on',
  walkOff: 'Walk off',
  tag: 'Wand tag',
  grade: { calm: 'calm', restless: 'restless', violent: 'wild' },
  placeJug: 'Jug on',
  liftJug: 'Jug off',
  pour: 'Pour (hold)',
  dribble: 'Dribble (hold)',
  pourStop: 'Stop',
  powder: (packets: string) => `Powder ${packets}`,
  fineBench: 'Fine scale',
  kitchenBench: 'Kitchen scale',
  asAsked: 'Do as asked',
  pull: 'pull',
  plug: 'plug',
};

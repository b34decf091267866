/**
 * A run of the open larval model GLOWORM-FL (Rose et al. 2015; script of its authors, lsoda), barber's pole worm:
 * 2000-06-01 to 14 at latitude 48, 100 eggs to begin with. Repeated in Python to 1e-10.
 */
export const LARVAL_RUN = {
  latitude: 48,
  startDayOfYear: 153,
  eggsAtFirst: 100,
  eggs: [100, 125, 150, 175, 200, 240, 280, 320, 360, 400, 500, 600, 700, 800],
  temperature: [19, 20, 20.5, 20.6, 18, 17, 19, 20, 21, 21, 21.5, 20, 21, 20],
  rain: [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 3, 10, 5, 0.5],
  /** Day, eggs, early larvae, infective larvae in dung, on pasture, on herbage. */
  days: [
    [1, 10, 0, 0, 0, 0],
    [2, 14.7395, 3.299, 0.395902, 0, 0],
    [5, 31.4493, 15.8043, 6.81973, 0, 0],
    [10, 70.9663, 47.3313, 38.0132, 0, 0],
    [11, 78.5719, 55.4214, 44.8687, 5.40247, 1.19288],
    [12, 414.401, 145.33, 57.1935, 17.7475, 4.32428],
    [14, 576.963, 357.573, 154.0885, 48.8911, 11.9126],
  ],
  /** Rain over evaporation, the day and the next four. */
  moisture: [0, 0, 0, 0, 0, 0, 0.1376, 0.5884, 0.8034, 0.8345, 1.047, 1.1904, 0.6266, 0.1175],
  /** Hours of daylight on the first and the twelfth day. */
  daylight: [
    [1, 15.77374],
    [12, 15.99116],
  ],
} as const;

/** Rates of the same model a day, at constant temperatures: run. */
export const LARVAL_RATES: readonly (readonly [
  temperature: number,
  development: number,
  eggDeath: number,
  earlyDeath: number,
  dungDeath: number,
  soilDeath: number,
  onHerbage: number,
  reachInfective: number,
])[] = [
  [5, 0, 0.140605, 0.087971, 0.0393445, 0.00850816, 0.0294283, 0],
  [10, 0.00884, 0.101393, 0.0586598, 0.0270925, 0.00417254, 0.1113363, 0.0343874],
  [15, 0.06199, 0.0861039, 0.0478947, 0.0235154, 0.00296248, 0.2252375, 0.4256948],
  [20, 0.11514, 0.0861083, 0.0478827, 0.0257274, 0.00304507, 0.2436555, 0.60255],
  [25, 0.16829, 0.1014083, 0.0586159, 0.0354795, 0.00453137, 0.140943, 0.654488],
  [30, 0.22144, 0.1406403, 0.0878609, 0.0616736, 0.00976227, 0.0435956, 0.6333352],
];

/** Base temperature and degree-days from egg to infective larva that follow from its development rate. Computed. */
export const DEGREE_DAYS = { base: 9.16839, needed: 94.0734 } as const;

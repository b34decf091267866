import type { enWhole } from './en-whole.ts';
import { es } from './es.ts';
import { esAnimalPages } from './es-animal-pages.ts';
import { esCheck } from './es-check.ts';
import { esClock } from './es-clock.ts';
import { esCorrecting } from './es-correcting.ts';
import { esDayBook } from './es-day-book.ts';
import { esDoseCard } from './es-dose-card.ts';
import { esEggs } from './es-eggs.ts';
import { esFarm } from './es-farm.ts';
import { esGroup } from './es-group.ts';
import { esGrowth } from './es-growth.ts';
import { esHealth } from './es-health.ts';
import { esHearing } from './es-hearing.ts';
import { esHerdFile } from './es-herd-file.ts';
import { esJug } from './es-jug.ts';
import { esKeeping } from './es-keeping.ts';
import { esMedicines } from './es-medicines.ts';
import { esMixSteps } from './es-mix-steps.ts';
import { esPhones } from './es-phones.ts';
import { esPhoto } from './es-photo.ts';
import { esPractice } from './es-practice.ts';
import { esSeason } from './es-season.ts';
import { esSettling } from './es-settling.ts';
import { esSetup } from './es-setup.ts';
import { esShed } from './es-shed.ts';
import { esStockLots } from './es-stock-lots.ts';
import { esSyringeCheck } from './es-syringe-check.ts';
import { esTakeAlong } from './es-take-along.ts';
import { esTestScreens } from './es-test-screens.ts';
import { esTray } from './es-tray.ts';
import { esVoice } from './es-voice.ts';
import { esWormDoors } from './es-worm-doors.ts';
import { esWormRules } from './es-worm-rules.ts';

/** Spanish: every word of the screen. */
export const esWhole: typeof enWhole = {
  ...es,
  animals: { ...es.animals, ...esAnimalPages },
  check: { ...es.check, ...esCheck },
  jug: { ...es.jug, ...esJug },
  mixing: { ...es.mixing, ...esMixSteps },
  photo: { ...es.photo, ...esPhoto },
  setup: { ...es.setup, ...esSetup },
  stock: { ...es.stock, ...esStockLots },
  tray: { ...es.tray, ...esTray },
  health: esHealth,
  keeping: esKeeping,
  voice: { ...es.voice, ...esVoice },
  clock: esClock,
  correcting: esCorrecting,
  dayBook: esDayBook,
  doseCard: esDoseCard,
  farm: esFarm,
  group: esGroup,
  growth: esGrowth,
  hearing: esHearing,
  herdFile: esHerdFile,
  medicines: esMedicines,
  phones: esPhones,
  season: esSeason,
  practice: esPractice,
  settling: esSettling,
  shed: esShed,
  syringeCheck: esSyringeCheck,
  takeAlong: esTakeAlong,
  wormRules: esWormRules,
  wormCheck: {
    ...es.wormCheck,
    ...esWormDoors,
    eggs: esEggs,
    test: { ...es.wormCheck.test, ...esTestScreens },
  },
};

import { en } from './en.ts';
import { enAnimalPages } from './en-animal-pages.ts';
import { enCheck } from './en-check.ts';
import { enClock } from './en-clock.ts';
import { enCorrecting } from './en-correcting.ts';
import { enDayBook } from './en-day-book.ts';
import { enDoseCard } from './en-dose-card.ts';
import { enEggs } from './en-eggs.ts';
import { enFarm } from './en-farm.ts';
import { enGroup } from './en-group.ts';
import { enGrowth } from './en-growth.ts';
import { enHealth } from './en-health.ts';
import { enHearing } from './en-hearing.ts';
import { enHerdFile } from './en-herd-file.ts';
import { enJug } from './en-jug.ts';
import { enKeeping } from './en-keeping.ts';
import { enMedicines } from './en-medicines.ts';
import { enMixSteps } from './en-mix-steps.ts';
import { enPhones } from './en-phones.ts';
import { enPhoto } from './en-photo.ts';
import { enPractice } from './en-practice.ts';
import { enSeason } from './en-season.ts';
import { enSettling } from './en-settling.ts';
import { enSetup } from './en-setup.ts';
import { enShed } from './en-shed.ts';
import { enStockLots } from './en-stock-lots.ts';
import { enSyringeCheck } from './en-syringe-check.ts';
import { enTakeAlong } from './en-take-along.ts';
import { enTestScreens } from './en-test-screens.ts';
import { enTray } from './en-tray.ts';
import { enVoice } from './en-voice.ts';
import { enWormDoors } from './en-worm-doors.ts';
import { enWormRules } from './en-worm-rules.ts';

/** English: every word of the screen. */
export const enWhole = {
  ...en,
  animals: { ...en.animals, ...enAnimalPages },
  check: { ...en.check, ...enCheck },
  jug: { ...en.jug, ...enJug },
  mixing: { ...en.mixing, ...enMixSteps },
  photo: { ...en.photo, ...enPhoto },
  setup: { ...en.setup, ...enSetup },
  stock: { ...en.stock, ...enStockLots },
  tray: { ...en.tray, ...enTray },
  health: enHealth,
  keeping: enKeeping,
  voice: { ...en.voice, ...enVoice },
  clock: enClock,
  correcting: enCorrecting,
  dayBook: enDayBook,
  doseCard: enDoseCard,
  farm: enFarm,
  group: enGroup,
  growth: enGrowth,
  hearing: enHearing,
  herdFile: enHerdFile,
  medicines: enMedicines,
  phones: enPhones,
  season: enSeason,
  practice: enPractice,
  settling: enSettling,
  shed: enShed,
  syringeCheck: enSyringeCheck,
  takeAlong: enTakeAlong,
  wormRules: enWormRules,
  wormCheck: {
    ...en.wormCheck,
    ...enWormDoors,
    eggs: enEggs,
    test: { ...en.wormCheck.test, ...enTestScreens },
  },
};

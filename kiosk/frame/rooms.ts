import { Later } from './later.ts';

function room<Screen>(load: () => Promise<{ readonly default: Screen }>): Later<Screen> {
  return new Later(async () => (await load()).default);
}

/** The screens that are no part of the page that starts: what neither Home nor the round needs at once. */
export const ROOMS = {
  animals: room(() => import('../screens/Animals.svelte')),
  board: room(() => import('../screens/Board.svelte')),
  cleaning: room(() => import('../cleaning/Cleaning.svelte')),
  clockAndZone: room(() => import('../settling/ClockAndZone.svelte')),
  correcting: room(() => import('../correcting/Correcting.svelte')),
  dayBook: room(() => import('../screens/DayBook.svelte')),
  doseCard: room(() => import('../dose-card/DoseCard.svelte')),
  doseRules: room(() => import('../shed/DoseRules.svelte')),
  dosedApart: room(() => import('../farm/DosedApart.svelte')),
  farm: room(() => import('../farm/FarmScreens.svelte')),
  firstStart: room(() => import('../first-start/FirstStart.svelte')),
  group: room(() => import('../group/GroupDose.svelte')),
  health: room(() => import('../health/Health.svelte')),
  listening: room(() => import('../hearing/ListeningScreens.svelte')),
  jug: room(() => import('../screens/Jug.svelte')),
  keeping: room(() => import('../keeping/Keeping.svelte')),
  medicines: room(() => import('../medicines/MedicineScreens.svelte')),
  pairHere: room(() => import('../phone/PairHere.svelte')),
  phones: room(() => import('../phones/PhoneScreens.svelte')),
  practice: room(() => import('../practice/PracticeRound.svelte')),
  scaleCheck: room(() => import('../check/ScaleCheck.svelte')),
  setPanel: room(() => import('../settling/SetPanel.svelte')),
  setUp: room(() => import('../setup/SetUp.svelte')),
  shed: room(() => import('../screens/Shed.svelte')),
  stock: room(() => import('../stock/StockScreens.svelte')),
  syringeCheck: room(() => import('../syringe-check/SyringeCheck.svelte')),
  tray: room(() => import('../tray/BenchTray.svelte')),
  voice: room(() => import('../voice/VoiceScreens.svelte')),
  workHere: room(() => import('../phone/WorkHere.svelte')),
  wormCheck: room(() => import('../screens/WormCheck.svelte')),
};

/** Fetches every room, one after the other; one that cannot be had is asked for again when it is opened. */
export async function fetchRooms(): Promise<void> {
  for (const each of Object.values(ROOMS)) await each.get().catch(() => undefined);
}

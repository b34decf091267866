import type { Random } from '../../hardware/simulator/random.ts';
import { KioskState } from '../../shared/state.ts';
import { type SentDose, touchAbout } from './monkey.ts';
import type { TouchedFarm } from './touched-farm.ts';

/** The screens a monkey is let loose on. */
export const TOUCHED_SCREENS = [
  'home',
  'platform',
  'jug',
  'day-book',
  'board',
  'animals',
  'worm-check',
  'shed',
] as const;

/** Touches between two looks, after which the monkey is brought back to the screen it is for. */
const BURST = 90;
/** A kiosk that is asked to begin anew still answers for 300 ms. */
const SETTLES_MS = 500;
/** A press that gives, in ms. */
const DELIBERATE_MS = 300;

/** What came of touching a screen. */
export interface TouchReport {
  readonly screen: string;
  readonly touches: number;
  /** Doses that left the page. */
  readonly doses: number;
  /** What must not be, one line each. */
  readonly faults: readonly string[];
}

/** Touches a screen at random, and looks after each burst whether the kiosk is as it may be. */
export async function touchScreen(
  farm: TouchedFarm,
  screen: (typeof TOUCHED_SCREENS)[number],
  touches: number,
  random: Random,
): Promise<TouchReport> {
  const faults: string[] = [];
  let doses = 0;
  for (let left = touches; left > 0; left -= BURST) {
    await farm.open(screen);
    const before = await farm.server.treatments();
    await touchAbout(farm.kiosk, Math.min(BURST, left), random);
    await farm.kiosk.page.waitForTimeout(SETTLES_MS);
    const sent = await farm.doses();
    doses += sent.length;
    faults.push(...sent.filter((dose) => !isDeliberate(dose)).map((dose) => `sent ${JSON.stringify(dose)}`));
    if (await farm.beganAnew()) {
      // Into a practice round or out of the demo, at another address: the page has nobody left to talk to.
      farm.kiosk.complaints.splice(0);
      continue;
    }
    const logged = (await farm.server.treatments()).length - before.length;
    if (logged > sent.length) faults.push(`${logged} treatments were logged of ${sent.length} sent`);
    const state = KioskState.safeParse(await farm.server.state());
    if (!state.success) faults.push(state.error.message);
    if (await farm.kiosk.page.evaluate(() => document.body.textContent.trim() === ''))
      faults.push('the page is empty');
    faults.push(...farm.kiosk.complaints.splice(0));
  }
  return { screen, touches, doses, faults };
}

function isDeliberate({ control, heldMs }: SentDose): boolean {
  return /^(give|answer)/.test(control ?? '') && heldMs !== null && heldMs >= DELIBERATE_MS;
}

import type { Page } from 'playwright-core';
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
/** How long a page may take to come on a busy machine, in ms. */
const COMES_MS = 10_000;
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

/** A screen that broke so often needs no further touch. */
const ENOUGH_FAULTS = 10;

/** Touches a screen at random, and looks after each burst whether the kiosk is as it may be; a farm that was lost is a fault and made anew. */
export async function touchScreen(
  farm: TouchedFarm,
  screen: (typeof TOUCHED_SCREENS)[number],
  touches: number,
  random: Random,
): Promise<TouchReport> {
  const faults: string[] = [];
  let doses = 0;
  let touched = 0;
  while (touched < touches && faults.length < ENOUGH_FAULTS) {
    const many = Math.min(BURST, touches - touched);
    touched += many;
    try {
      const burst = await touchOnce(farm, screen, many, random);
      doses += burst.doses;
      faults.push(...burst.faults);
    } catch (lost) {
      faults.push(`after ${touched} touches: ${String(lost)}`);
      await farm.close();
    }
  }
  return { screen, touches: touched, doses, faults };
}

/** One burst of touches and the look after it; rejects where kiosk or page is gone. */
async function touchOnce(
  farm: TouchedFarm,
  screen: string,
  touches: number,
  random: Random,
): Promise<Pick<TouchReport, 'doses' | 'faults'>> {
  await farm.open(screen);
  const { page, complaints } = farm.kiosk;
  const before = await farm.server.treatments();
  await touchAbout(farm.kiosk, touches, random);
  await page.waitForTimeout(SETTLES_MS);
  const sent = await farm.doses();
  const faults = sent.filter((dose) => !isDeliberate(dose)).map((dose) => `sent ${JSON.stringify(dose)}`);
  if (await farm.beganAnew()) {
    // Into a practice round or out of the demo, at another address: the page has nobody left to talk to.
    complaints.splice(0);
    return { doses: sent.length, faults };
  }
  const logged = (await farm.server.treatments()).length - before.length;
  if (logged > sent.length) faults.push(`${logged} treatments were logged of ${sent.length} sent`);
  const state = KioskState.safeParse(await farm.server.state());
  if (!state.success) faults.push(state.error.message);
  if (!(await showsSomething(page))) faults.push(`the page is empty: ${page.url()} ${await page.content()}`);
  faults.push(...complaints.splice(0));
  return { doses: sent.length, faults };
}

/** Whether anything stands on the page, or comes to stand there as it is loaded. */
function showsSomething(page: Page): Promise<boolean> {
  return page
    .waitForFunction(() => document.body.textContent.trim() !== '', { timeout: COMES_MS })
    .then(
      () => true,
      () => false,
    );
}

function isDeliberate({ control, heldMs }: SentDose): boolean {
  return /^(give|answer)/.test(control ?? '') && heldMs !== null && heldMs >= DELIBERATE_MS;
}

import { seededRandom } from '../../hardware/simulator/random.ts';
import { TOUCHED_SCREENS, type TouchReport, touchScreen } from './touch-screen.ts';
import { TouchedFarm } from './touched-farm.ts';

/** How a screen fared, and how long it took. */
export interface LongReport extends TouchReport {
  readonly seconds: number;
}

/** Kiosks touched at the same time: a monkey waits as much as it works. */
const AT_ONCE = 2;

/** Touches every screen at random, each with chance of its own. */
export async function touchLong(
  touches: number,
  onscreen: (report: LongReport) => void,
): Promise<LongReport[]> {
  const reports: LongReport[] = [];
  const open = [...TOUCHED_SCREENS.entries()];
  const hands = Array.from({ length: AT_ONCE }, async () => {
    const farm = new TouchedFarm();
    try {
      for (let next = open.shift(); next !== undefined; next = open.shift()) {
        const [at, screen] = next;
        const from = performance.now();
        const report = await touchScreen(farm, screen, touches, seededRandom(at + 1));
        reports.push({ ...report, seconds: Math.round((performance.now() - from) / 1000) });
        onscreen(reports.at(-1) as LongReport);
      }
    } finally {
      await farm.close();
    }
  });
  await Promise.all(hands);
  return reports;
}

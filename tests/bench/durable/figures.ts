import type { Figure } from '../table.ts';
import { busyDayFigures } from './busy-day.ts';
import { commitFigures } from './commit.ts';
import { runningFigures } from './running.ts';

/** What it takes to keep the records for years, and the kiosk running. */
export async function durableFigures(): Promise<Figure[]> {
  return [...commitFigures(), ...busyDayFigures(), ...(await runningFigures())];
}

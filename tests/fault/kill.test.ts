import { expect, test } from 'vitest';
import { killMany } from './kill.ts';

/** `npm run soak -- kill` does it two thousand times. */
const KILLS = 50;

test('a kiosk killed at random instants of its work loses nothing it acknowledged, doubles nothing and leaves no half', async () => {
  const report = await killMany(KILLS, 20_261_129);
  console.log(report);
  expect(report).toMatchObject({ kills: KILLS, lost: [], miscounted: [], halves: [] });
  // Else it was never killed at work, and nothing was tested.
  expect(report.acknowledged).toBeGreaterThan(2 * KILLS);
  expect(report.inFlight).toBeGreaterThan(KILLS / 2);
}, 1_800_000);

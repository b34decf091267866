import { expect, test } from 'vitest';
import { liveHours } from './whole-day.ts';

// `npm run soak -- day` lives all twenty-four hours of a day.
test('half an hour of a full barn leaves nothing behind but its records', () => {
  const report = liveHours(0.5);
  console.log(report);
  expect(report).toMatchObject({ doses: 12, readings: 18_000, failures: [] });
  expect(report.patches).toBeGreaterThan(1500);
  expect(report.last.heapMb - report.first.heapMb).toBeLessThan(8);
  expect(report.last.descriptors).toBeLessThanOrEqual(report.first.descriptors + 1);
}, 120_000);

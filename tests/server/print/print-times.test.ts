import { expect, test } from 'vitest';
import { labelTime } from '../../../server/print/print-times.ts';

test.each([
  ['UTC', 'Wed 15 Apr 2026 02:03'],
  ['America/Chicago', 'Tue 14 Apr 2026 21:03'],
  ['Europe/Berlin', 'Wed 15 Apr 2026 04:03'],
])('a label is dated by the clock of the farm: %s', (timeZone, shown) => {
  expect(labelTime(Date.UTC(2026, 3, 15, 2, 3), timeZone)).toBe(shown);
});

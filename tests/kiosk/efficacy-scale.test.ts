import { expect, test } from 'vitest';
import { barScale, efficacyScale } from '../../kiosk/worm-check/efficacy-scale.ts';

test('each tenfold fewer eggs left is a step as long, up to one left of a thousand', () => {
  const at = efficacyScale(0.8);
  expect([0, 0.9, 0.99, 0.999].map((efficacy) => Math.round(at(efficacy)))).toEqual([0, 33, 67, 100]);
  expect(at(1)).toBe(100);
});

test('more eggs after than before have their place on the left', () => {
  const at = efficacyScale(-1.156);
  expect(at(-1.156)).toBe(0);
  expect(at(0)).toBeGreaterThan(0);
  expect(at(0)).toBeLessThan(at(0.9));
});

test('bars share one scale from nothing', () => {
  const along = barScale(400);
  expect([0, 100, 400].map(along)).toEqual([0, 25, 100]);
  expect(barScale(0)(0)).toBe(0);
});

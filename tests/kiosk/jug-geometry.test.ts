import fc from 'fast-check';
import { expect, test } from 'vitest';
import { jugColumn, lastTenth } from '../../kiosk/drawings/jug-geometry.ts';

const TARGET = 903.5;
const BAND = 4.5;

test('the water stands in proportion to what is in the jug', () => {
  expect(jugColumn(0, TARGET, BAND).water).toBe(0);
  expect(jugColumn(TARGET / 2, TARGET, BAND).water).toBeCloseTo(0.5, 9);
  expect(jugColumn(TARGET, TARGET, BAND).water).toBeCloseTo(1, 9);
  expect(jugColumn(-50, TARGET, BAND).water).toBe(0);
  expect(jugColumn(9000, TARGET, BAND).water).toBe(1.3);
});

test('the band narrows as the target nears, down to its true width and no further', () => {
  const mass = fc.double({ min: 0, max: TARGET, noNaN: true });
  fc.assert(
    fc.property(mass, mass, (a, b) => {
      const [far, near] = [jugColumn(Math.min(a, b), TARGET, BAND), jugColumn(Math.max(a, b), TARGET, BAND)];
      expect(near.bandHigh - near.bandLow).toBeLessThanOrEqual(far.bandHigh - far.bandLow + 1e-12);
      expect(near.bandHigh - near.bandLow).toBeGreaterThanOrEqual((2 * BAND) / TARGET - 1e-12);
    }),
  );
  const there = jugColumn(TARGET, TARGET, BAND);
  expect(there.bandHigh - there.bandLow).toBeCloseTo((2 * BAND) / TARGET, 9);
});

test('the magnified part appears with the last tenth', () => {
  expect(lastTenth(0.899 * TARGET, TARGET, BAND)).toBeNull();
  expect(lastTenth(0.9 * TARGET, TARGET, BAND)?.water).toBeCloseTo(0, 9);
});

test('in the magnified part water inside the band lies between its lines', () => {
  const near = lastTenth(TARGET + 2, TARGET, BAND);
  expect(near?.water).toBeGreaterThan(near?.bandLow ?? 1);
  expect(near?.water).toBeLessThan(near?.bandHigh ?? 0);
});

test('far too much water fills the magnified part and no more', () => {
  expect(lastTenth(2 * TARGET, TARGET, BAND)?.water).toBe(1);
});

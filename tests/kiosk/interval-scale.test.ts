import fc from 'fast-check';
import { expect, test } from 'vitest';
import { intervalScale } from '../../kiosk/dose-card/interval-scale.ts';

const rate = fc.double({ min: 0.1, max: 30, noNaN: true });

test('every rate lies on the drawing, in its order, and equal steps are equally long', () => {
  fc.assert(
    fc.property(rate, rate, rate, fc.option(rate), (value, spread, above, below) => {
      const target = value;
      const rates = {
        low: Math.max(0, value - spread),
        high: value + spread,
        target,
        ceiling: target + above,
        floor: below === null ? null : Math.max(0, target - below),
      };
      const at = intervalScale(rates, 100);
      const all = [
        rates.low,
        rates.high,
        target,
        rates.ceiling,
        ...(rates.floor === null ? [] : [rates.floor]),
      ];
      for (const each of all) {
        expect(at(each)).toBeGreaterThanOrEqual(-1e-9);
        expect(at(each)).toBeLessThanOrEqual(100 + 1e-9);
      }
      const sorted = [...all].sort((a, b) => a - b).map(at);
      expect([...sorted].sort((a, b) => a - b)).toEqual(sorted);
      expect(at(target + 1) - at(target)).toBeCloseTo(at(2) - at(1), 6);
    }),
  );
});

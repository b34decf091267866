import { expect, test } from 'vitest';
import { drawWords } from '../../kiosk/platform/draw-words.ts';
import { enWhole as en } from '../../kiosk/words/en-whole.ts';
import { Show } from '../../kiosk/words/show.ts';

const show = new Show({ unit: 'kg', division: 100, benchDivision: 1, locale: 'en-GB', nowMs: 0 });

test.each([
  [[5.8, 5.7], '5.8 mL + 5.7 mL'],
  [[4.7, 4.7, 4.6], '2 × 4.7 mL + 4.6 mL'],
  [[5, 4.9, 4.9], '5 mL + 2 × 4.9 mL'],
  [[6, 6], '2 × 6 mL'],
])('draws of %j mL read "%s"', (marksMl, shown) => {
  expect(drawWords({ marksMl, syringeGraduationMl: 0.1 }, en, show)).toBe(shown);
});

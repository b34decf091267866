import { expect, test } from 'vitest';
import { CARD_MM, diagonalInches, mostPxPerMm, pixelsPerMm } from '../../../core/panel/panel.ts';

test('a card as wide on the glass as in the hand tells the diagonal', () => {
  // 1024 x 600 at 7 in: 1186.8 px over 177.8 mm are 6.675 px/mm, and the card 571.4 px.
  const pxPerMm = 571.4 / CARD_MM.width;
  expect(pxPerMm).toBeCloseTo(6.675, 3);
  expect(diagonalInches({ widthPx: 1024, heightPx: 600, pxPerMm })).toBeCloseTo(7, 2);
  expect(pixelsPerMm(1024, 600, 7)).toBeCloseTo(6.675, 3);
});

test('the smallest panel of the screens fits as it is, and a smaller one is drawn smaller', () => {
  expect(mostPxPerMm({ widthPx: 800, heightPx: 480 })).toBeGreaterThan(pixelsPerMm(800, 480, 7));
  expect(mostPxPerMm({ widthPx: 800, heightPx: 480 })).toBeLessThan(pixelsPerMm(800, 480, 5));
  expect(mostPxPerMm({ widthPx: 720, heightPx: 1280 })).toBeGreaterThan(pixelsPerMm(720, 1280, 7));
});

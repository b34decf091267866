import { expect, test } from 'vitest';
import { redatedJug } from '../../../core/mixing/redate.ts';
import { HOUR_MS } from '../../../core/moment.ts';
import { grams } from '../../../core/quantity/mass.ts';
import { pieces } from '../../../core/stock/pieces.ts';
import { makeJug } from '../make/jug.ts';

const EIGHT = Date.UTC(2027, 3, 12, 8);
const NINETEEN_EIGHTY_SIX = Date.UTC(1986, 0, 1);
const BOARD = { start: 'boot', sinceMs: 0 };
const TOLD = { ofStart: { board: BOARD, isMs: EIGHT }, wasBeforeMs: null };
const UNDATED = {
  mixedAtMs: NINETEEN_EIGHTY_SIX,
  useByMs: NINETEEN_EIGHTY_SIX + 12 * HOUR_MS,
  clockTrusted: false,
};
const WEIGHED = {
  vesselId: 'v',
  letter: 'A',
  empty: grams(200),
  contents: grams(950),
  uncertainty: grams(1),
};
const lot = (expiresAtMs: number) => ({ lotId: 'lot', lot: 'B7', expiresAtMs, pieces: pieces(1) });

test('a mixed jug is good as long as ever, from when it was mixed', () => {
  const jug = makeJug({ ...UNDATED, weighed: WEIGHED });
  expect(redatedJug(jug, BOARD, TOLD)).toEqual({
    ...jug,
    mixedAtMs: EIGHT,
    useByMs: EIGHT + 12 * HOUR_MS,
    clockTrusted: true,
  });
});

test('a bottle is not good past the month printed on its lot', () => {
  const bottle = makeJug({ ...UNDATED, stock: lot(EIGHT + HOUR_MS) });
  expect(redatedJug(bottle, BOARD, TOLD)).toMatchObject({ useByMs: EIGHT + HOUR_MS, clockTrusted: true });
});

test('a bottle of which no month was kept stays undated', () => {
  const bottle = makeJug(UNDATED);
  expect(redatedJug(bottle, BOARD, TOLD)).toEqual(bottle);
});

test('a jug whose board time is not known stands as it was written', () => {
  const jug = makeJug({ ...UNDATED, weighed: WEIGHED });
  expect(redatedJug(jug, null, TOLD)).toEqual(jug);
});

import { describe, expect, test } from 'vitest';
import { redatedTreatment } from '../../../core/round/redate.ts';
import { makeTreatment } from '../make/book.ts';

const DUBLIN = 'Europe/Dublin';

/** A dose that keeps milk back for three days and meat for 36 hours, given at ten minutes of running time in 1986. */
function dose() {
  const plain = makeTreatment();
  const source = 'made up for this test';
  return {
    ...plain,
    givenAtMs: Date.UTC(1986, 0, 1),
    clockTrusted: false,
    board: { start: 'boot', sinceMs: 600_000 },
    meat: { kind: 'at' as const, atMs: Date.UTC(1986, 0, 2, 12) },
    milk: { kind: 'at' as const, atMs: Date.UTC(1986, 0, 4) },
    offer: {
      ...plain.offer,
      regimen: {
        ...plain.offer.regimen,
        meat: { kind: 'hours' as const, hours: 36, evidence: 'primary' as const, source },
        milk: { kind: 'days' as const, days: 3, evidence: 'primary' as const, source },
      },
    },
  };
}

/** Told at the same running time what the time was, so that it is the time of the dose. */
function toldThat(isMs: number) {
  const ofStart = { board: { start: 'boot', sinceMs: 600_000 }, isMs, timeZone: DUBLIN };
  return redatedTreatment(dose(), { ofStart, wasBeforeMs: null });
}

describe('the clear times of a dose that was dated anew are counted from its date', () => {
  // Clocks in Dublin went on at 01:00 UTC on 28 March 2027 and go back at 01:00 UTC on 31 October 2027 (IANA time zone database).
  test('over the day clocks go on: three days to the same time of day are 71 hours, 36 hours are 36', () => {
    const { meat, milk, clockTrusted } = toldThat(Date.UTC(2027, 2, 27, 9));
    expect(clockTrusted).toBe(true);
    expect(milk).toEqual({ kind: 'at', atMs: Date.UTC(2027, 2, 30, 8) });
    expect(meat).toEqual({ kind: 'at', atMs: Date.UTC(2027, 2, 28, 21) });
  });

  test('over the day clocks go back: three days are 73 hours', () => {
    expect(toldThat(Date.UTC(2027, 9, 30, 8)).milk).toEqual({
      kind: 'at',
      atMs: Date.UTC(2027, 10, 2, 9),
    });
  });

  test('what is not for people, or not known, stays so', () => {
    const plain = dose();
    const regimen = {
      ...plain.offer.regimen,
      milk: { kind: 'not-for-people' as const, source: 'made up for this test' },
    };
    const ofStart = { board: plain.board, isMs: Date.UTC(2027, 3, 1), timeZone: DUBLIN };
    const again = redatedTreatment(
      { ...plain, offer: { ...plain.offer, regimen } },
      { ofStart, wasBeforeMs: null },
    );
    expect(again.milk).toEqual({ kind: 'not-for-people' });
  });
});

test('a dose that nothing was told of stands as it was written', () => {
  expect(redatedTreatment(dose(), { ofStart: null, wasBeforeMs: null })).toEqual(dose());
});

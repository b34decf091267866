import { describe, expect, test } from 'vitest';
import { type ClockTrust, lookAtClock, sawRecord, sawStart, tellTime } from '../../../core/clock/trust.ts';
import { DAY_MS, HOUR_MS } from '../../../core/moment.ts';

const NOON = Date.UTC(2027, 3, 12, 12);
const BUILT: ClockTrust = { floorMs: NOON - 30 * DAY_MS, startedAtMs: null, isSaid: false };

/** Looks one after another: the time of day in ms from noon, the running time, and whether a server of time was heard. */
function looks(trust: ClockTrust, ...seen: [fromNoon: number, since: number, setByServer?: boolean][]) {
  let known = trust;
  return seen.map(([fromNoon, sinceStartMs, setByServer = false]) => {
    const clocks = { wallMs: NOON + fromNoon, sinceStartMs, setByServer, beginsWithSaved: false };
    const look = lookAtClock(known, clocks);
    known = look.trust;
    return look.trusted;
  });
}

describe('a clock', () => {
  test('that runs with the board is believed, also over years and when drawn nearer by seconds', () => {
    const [year, half] = [365 * DAY_MS, 30_000];
    expect(looks(BUILT, [0, 1000], [HOUR_MS, HOUR_MS + 1000], [year + half, year + 1000])).toEqual([
      true,
      true,
      true,
    ]);
  });

  test('forty years back is not believed, and is once it was set', () => {
    const back = -40 * 365 * DAY_MS;
    expect(looks(BUILT, [back, 1000], [back + 5000, 6000], [0, 7000])).toEqual([false, false, true]);
  });

  test('that jumps a day on in mid-round is not believed, and is again once it is back', () => {
    expect(looks(BUILT, [0, 1000], [DAY_MS + 500, 1500], [1000, 2000])).toEqual([true, false, true]);
  });

  test('that jumps back in mid-round is not believed', () => {
    expect(looks(BUILT, [0, 1000], [500 - 2 * HOUR_MS, 1500])).toEqual([true, false]);
  });

  test('that a server of time set is believed, and measured from there', () => {
    const on = DAY_MS + 500;
    expect(looks(BUILT, [0, 1000], [on, 1500, true], [on + 500, 2000], [1500, 2500])).toEqual([
      true,
      true,
      true,
      false,
    ]);
  });

  test('is not believed before the newest record, whatever a server of time says', () => {
    const trust = sawRecord(sawRecord(BUILT, NOON), NOON - HOUR_MS);
    expect(looks(trust, [-1, 1000, true], [0, 1001])).toEqual([false, true]);
  });

  test('that was drawn away while the program started anew is not believed', () => {
    const since = sawStart(BUILT, NOON - 1000);
    expect(looks(since, [DAY_MS + 500, 1500])).toEqual([false]);
    expect(looks(since, [500, 1500])).toEqual([true]);
  });
});

describe('a clock that begins with the time a board was switched off at', () => {
  const saved = (trust: ClockTrust, setByServer = false) =>
    lookAtClock(trust, { wallMs: NOON, sinceStartMs: 1000, setByServer, beginsWithSaved: true });

  test('is not believed, however well it fits the records', () => {
    expect(saved(sawRecord(BUILT, NOON - 1000))).toMatchObject({ trusted: false, nowMs: NOON });
  });

  test('is believed once a server of time was heard, or a person said the time', () => {
    expect(saved(BUILT, true).trusted).toBe(true);
    const told = tellTime(BUILT, NOON + 2 * DAY_MS, 500);
    expect(saved(told)).toMatchObject({ trusted: true, nowMs: NOON + 2 * DAY_MS + 500 });
  });
});

describe('a person’s word on the time', () => {
  const look = (trust: ClockTrust, wallMs: number, sinceStartMs: number, setByServer = false) =>
    lookAtClock(trust, { wallMs, sinceStartMs, setByServer, beginsWithSaved: false });
  const told = tellTime(BUILT, NOON, 10_000);

  test('runs on with the board, whatever its clock does', () => {
    for (const wallMs of [NOON - 40 * 365 * DAY_MS, NOON + DAY_MS])
      expect(look(told, wallMs, 10_000 + HOUR_MS)).toMatchObject({ trusted: true, nowMs: NOON + HOUR_MS });
  });

  test('gives way to a server of time', () => {
    const heard = look(told, NOON + 90_000, 20_000, true);
    expect(heard).toMatchObject({ trusted: true, nowMs: NOON + 90_000 });
    expect(look(heard.trust, NOON + 91_000, 21_000)).toMatchObject({ trusted: true, nowMs: NOON + 91_000 });
  });

  test('takes down a floor that a record dated a year ahead had raised', () => {
    const ahead = sawRecord(BUILT, NOON + 365 * DAY_MS);
    expect(look(ahead, NOON, 10_000).trusted).toBe(false);
    expect(look(tellTime(ahead, NOON, 10_000), NOON, 11_000)).toMatchObject({
      trusted: true,
      nowMs: NOON + 1000,
    });
  });
});

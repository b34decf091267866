import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { DAY_MS, HOUR_MS } from '../../../core/moment.ts';
import { systemClock } from '../../../server/barn/clock.ts';
import { tellClockOfRecords } from '../../../server/barn/clock-at-start.ts';
import { Database } from '../../../server/store/sqlite.ts';
import { verifyFile } from '../../../server/upkeep/verify.ts';
import { HandBoard } from '../make/board-clocks.ts';
import { given } from '../make/book.ts';
import { testBarn } from '../make/test-barn.ts';

const BUILT = Date.UTC(2027, 0, 1);
const NOON = Date.UTC(2027, 3, 12, 12);
const NOON_SAID = '2027-04-12T12:00';
const YEAR_MS = 365 * DAY_MS;
const folders: string[] = [];

afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
});

/** A kiosk on a board whose wall clock stands at a time, over a database in memory or in a file. */
function kiosk(wallMs: number, { path = ':memory:', start = 'start-1' } = {}) {
  const board = new HandBoard(wallMs);
  board.start = start;
  const clock = systemClock(BUILT, board);
  const made = testBarn(path, undefined, { clock });
  tellClockOfRecords(clock, made.store, made.barn.context.memory);
  const animal = made.barn.context.memory.animals[0]?.id ?? '';
  const jug = made.barn.context.memory.jugs[0]?.id ?? '';
  /** Writes a dose, dated as the kiosk would date it now. */
  const dose = (id: string) => {
    const { wallMs: atMs, board: at } = clock.now();
    const plain = given({ id, animal, jug, atMs: Math.round(atMs), trusted: clock.isTrusted() });
    made.store.dayBook.addTreatment({ ...plain, board: at ?? null });
  };
  const dated = (id: string) => {
    const { givenAtMs, clockTrusted } = made.store.dayBook.entry(id)?.treatment ?? {};
    return { givenAtMs, clockTrusted };
  };
  return { ...made, path, board, clock, animal, dose, dated };
}

function newPath(): string {
  const folder = mkdtempSync(join(tmpdir(), 'set-clock-'));
  folders.push(folder);
  return join(folder, 'test.sqlite');
}

describe('a person says what the time is', () => {
  test('on a board forty years back: its doses are dated by the running time, and the file is whole', () => {
    const { board, clock, send, dose, dated, path, store, animal } = kiosk(NOON - 40 * YEAR_MS, {
      path: newPath(),
    });
    dose('t1');
    board.pass(20 * 60_000);
    expect(dated('t1').clockTrusted).toBe(false);
    expect(send({ type: 'set-clock', at: NOON_SAID })).toMatchObject({ ok: true });
    expect(clock.isTrusted()).toBe(true);
    expect(clock.now().wallMs).toBe(NOON);
    expect(dated('t1')).toEqual({ givenAtMs: NOON - 20 * 60_000, clockTrusted: true });
    expect(store.dayBook.earlierDoses(animal)).toMatchObject([
      { givenAtMs: NOON - 20 * 60_000, clockTrusted: true },
    ]);
    expect(verifyFile(path)).toMatchObject({ links: 2, troubles: [] });
    // What was written stands in its record.
    const db = new Database(path, { readonly: true });
    expect(db.prepare('SELECT given_at_ms FROM treatments').pluck().get()).toBe(NOON - 40 * YEAR_MS);
    db.close();
  });

  test('its word holds when the program starts anew, and no longer once the board does', () => {
    const first = kiosk(NOON - 40 * YEAR_MS, { path: newPath() });
    first.send({ type: 'set-clock', at: NOON_SAID });
    first.store.close();
    const again = kiosk(NOON - 40 * YEAR_MS, { path: first.path });
    expect(again.clock.isTrusted()).toBe(true);
    expect(again.clock.now().wallMs).toBe(NOON);
    again.store.close();
    const next = kiosk(NOON - 40 * YEAR_MS, { path: first.path, start: 'start-2' });
    expect(next.clock.isTrusted()).toBe(false);
  });

  test('doses dated a year ahead hold the clock up no more, and their dates are unknown', () => {
    const ahead = kiosk(NOON + YEAR_MS, { path: newPath() });
    ahead.dose('t1');
    expect(ahead.dated('t1').clockTrusted).toBe(true);
    ahead.store.close();
    const { clock, send, dated, barn } = kiosk(NOON, { path: ahead.path, start: 'start-2' });
    expect(clock.isTrusted()).toBe(false);
    expect(send({ type: 'set-clock', at: NOON_SAID })).toMatchObject({ ok: true });
    expect(clock.isTrusted()).toBe(true);
    expect(dated('t1')).toEqual({ givenAtMs: NOON + YEAR_MS, clockTrusted: false });
    expect(barn.context.memory.recent[0]?.treatment.clockTrusted).toBe(false);
  });

  test('a later word takes the place of an earlier one', () => {
    const { board, send, dose, dated } = kiosk(NOON - 40 * YEAR_MS);
    dose('t1');
    send({ type: 'set-clock', at: '2027-04-13T12:00' });
    board.pass(60_000);
    send({ type: 'set-clock', at: '2027-04-12T12:01' });
    expect(dated('t1')).toEqual({ givenAtMs: NOON, clockTrusted: true });
  });

  test('a day before the program was made is refused', () => {
    const { send, clock } = kiosk(NOON - 40 * YEAR_MS);
    expect(send({ type: 'set-clock', at: '2026-04-12T12:00' })).toMatchObject({
      code: 'time-before-program',
    });
    expect(clock.isTrusted()).toBe(false);
  });

  test('against a server of time it is refused', () => {
    const { send, board, clock } = kiosk(NOON);
    board.server = true;
    expect(send({ type: 'set-clock', at: '2027-04-13T12:00' })).toMatchObject({ code: 'server-knows-time' });
    expect(clock.now().wallMs).toBe(NOON);
  });

  test('where the disk refuses the word, the clock is believed as little as before', () => {
    const { send, clock, store } = kiosk(NOON - 40 * YEAR_MS);
    vi.spyOn(store.handled, 'add').mockImplementation(() => {
      throw new Error('no room');
    });
    expect(send({ type: 'set-clock', at: NOON_SAID })).toMatchObject({ code: 'not-written' });
    expect(clock.isTrusted()).toBe(false);
  });
});

describe('without a word', () => {
  test('doses are dated once a server of time is heard', () => {
    const { barn, board, dose, dated, store } = kiosk(NOON - 40 * YEAR_MS);
    const words = vi.spyOn(store.dayBook, 'correctClock');
    dose('t1');
    board.pass(HOUR_MS);
    board.set(NOON);
    board.server = true;
    barn.tick();
    expect(dated('t1')).toEqual({ givenAtMs: NOON - HOUR_MS, clockTrusted: true });
    barn.tick();
    expect(words).toHaveBeenCalledOnce();
    expect(words.mock.calls[0]?.[0]).toMatchObject({ told: 'server', isMs: NOON });
  });

  test('doses of a jump are dated once the clock stands where it stood', () => {
    const { barn, board, dose, dated, clock } = kiosk(NOON);
    barn.tick();
    board.set(NOON - 3 * HOUR_MS);
    board.pass(60_000);
    dose('t1');
    expect(dated('t1').clockTrusted).toBe(false);
    board.set(NOON + 60_000);
    barn.tick();
    expect(clock.isTrusted()).toBe(true);
    expect(dated('t1')).toEqual({ givenAtMs: NOON + 60_000, clockTrusted: true });
  });

  test('a clock that was right all along is corrected by nothing', () => {
    const { barn, board, dose, store } = kiosk(NOON);
    const words = vi.spyOn(store.dayBook, 'correctClock');
    board.server = true;
    dose('t1');
    barn.tick();
    expect(words).not.toHaveBeenCalled();
  });

  test('a jump of a day while the program starts anew is noticed by the last dose', () => {
    const first = kiosk(NOON, { path: newPath() });
    first.dose('t1');
    first.store.close();
    const { clock } = kiosk(NOON + DAY_MS, { path: first.path });
    expect(clock.isTrusted()).toBe(false);
  });
});

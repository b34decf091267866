import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ClockCorrection } from '../../../core/clock/correction.ts';
import type { Event } from '../../../core/hub/event.ts';
import { DAY_MS, HOUR_MS } from '../../../core/moment.ts';
import { nothingTouched } from '../../../server/store/receive-records.ts';
import { createStore, type Store } from '../../../server/store/store.ts';
import { makeJug } from '../../core/make/jug.ts';
import { bookStore, given } from '../make/book.ts';

const NOON = Date.UTC(2027, 3, 12, 12);
const YEAR_MS = 365 * DAY_MS;
const MINUTE_MS = 60_000;
const MEAT = { kind: 'hours', hours: 96, evidence: 'entered', source: 'an invented label' } as const;
const HERE = { wallMs: NOON + 2 * DAY_MS, clockTrusted: true };

/** Takes in what others hold and a store does not, one life after the other. */
function takeFrom(to: Store, from: Store, lives = from.received.held().map(({ life }) => life)) {
  const touched = nothingTouched();
  const held = new Map(to.received.held().map(({ life, head }) => [life, head]));
  for (const life of lives)
    to.whole(() => to.received.take(from.events.after(life, held.get(life) ?? 0, 10_000), HERE, touched));
  return touched;
}

/** A dose so many minutes into a start of a board, by a clock that is off. */
function dose(store: Store, id: string, minutes: number, over: Dosed = {}): void {
  const { start = 'start-1', offMs = 0, trusted = false, animal = 'cora' } = over;
  const atMs = NOON + minutes * MINUTE_MS + offMs;
  const treatment = given({ id, animal, atMs, trusted, meat: MEAT });
  store.dayBook.addTreatment({ ...treatment, board: { start, sinceMs: minutes * MINUTE_MS } });
}
interface Dosed {
  readonly start?: string;
  readonly offMs?: number;
  readonly trusted?: boolean;
  readonly animal?: string;
}

/** The word, so many minutes into a start, what the time was. */
function word(id: string, minutes: number, start = 'start-1', offMs = 0): ClockCorrection {
  return {
    id,
    board: { start, sinceMs: minutes * MINUTE_MS },
    wasMs: null,
    isMs: NOON + minutes * MINUTE_MS + offMs,
    told: 'person',
    by: 'Wren',
    timeZone: 'Europe/Dublin',
  };
}

const dated = (store: Store, id: string) => {
  const { givenAtMs, clockTrusted, meat } = store.dayBook.entry(id)?.treatment ?? {};
  return { givenAtMs, clockTrusted, meat };
};

describe('a word on the clock of another kiosk', () => {
  function pair(): [Store, Store] {
    const [one, other] = [bookStore(), createStore(':memory:')];
    takeFrom(other, one);
    return [one, other];
  }

  test('dates its doses here as there, their clear times and what they keep back', () => {
    const [one, other] = pair();
    dose(one, 't1', 20, { offMs: -40 * YEAR_MS });
    takeFrom(other, one);
    expect(dated(other, 't1')).toMatchObject({
      givenAtMs: NOON + 20 * MINUTE_MS - 40 * YEAR_MS,
      clockTrusted: false,
    });
    one.dayBook.correctClock(word('w1', 60));
    const touched = takeFrom(other, one);
    expect(dated(other, 't1')).toEqual(dated(one, 't1'));
    expect(dated(other, 't1')).toEqual({
      givenAtMs: NOON + 20 * MINUTE_MS,
      clockTrusted: true,
      meat: { kind: 'at', atMs: NOON + 20 * MINUTE_MS + 96 * HOUR_MS },
    });
    expect(touched.treatments).toEqual(new Set(['t1']));
    expect(other.dayBook.earlierDoses('cora')).toMatchObject([
      { givenAtMs: NOON + 20 * MINUTE_MS, clockTrusted: true },
    ]);
    expect(other.dayBook.keepingBack('cora').map(({ treatment }) => treatment.meat)).toEqual([
      dated(one, 't1').meat,
    ]);
    expect(other.dayBook.page({ fromMs: NOON }, null, 9)).toHaveLength(1);
  });

  test('dates those that come after it, and those that waited while it came', () => {
    const [one, other] = [bookStore(), createStore(':memory:')];
    const third = createStore(':memory:');
    takeFrom(other, one);
    dose(other, 't1', 20, { offMs: -DAY_MS });
    other.dayBook.correctClock(word('w1', 60));
    dose(other, 't2', 70, { offMs: -DAY_MS });
    takeFrom(third, other, [other.events.self().life]);
    expect(third.received.waiting()).toBe(2);
    takeFrom(third, one);
    expect(third.received.waiting()).toBe(0);
    for (const id of ['t1', 't2']) expect(dated(third, id)).toEqual(dated(other, id));
    expect(third.dayBook.earlierDoses('cora').map(({ clockTrusted }) => clockTrusted)).toEqual([true]);
  });

  test('takes the date of what it had written in an earlier start, and gives it back where it was a mistake', () => {
    const [one, other] = pair();
    dose(one, 't1', 20, { start: 'start-0', offMs: HOUR_MS, trusted: true });
    one.dayBook.correctClock(word('w1', 30));
    takeFrom(other, one);
    expect(dated(other, 't1').clockTrusted).toBe(false);
    expect(other.dayBook.earlierDoses('cora')).toMatchObject([{ clockTrusted: false }]);
    one.dayBook.correctClock(word('w2', 31, 'start-1', 2 * HOUR_MS));
    takeFrom(other, one);
    for (const store of [one, other]) {
      expect(dated(store, 't1').clockTrusted).toBe(true);
      expect(store.dayBook.earlierDoses('cora')).toMatchObject([{ clockTrusted: true }]);
    }
  });

  test('leaves a date that the word on its own start bears out, here and there', () => {
    const [one, other] = pair();
    dose(one, 't1', 10, { start: 'start-0', trusted: true });
    one.dayBook.correctClock(word('w0', 20, 'start-0'));
    one.dayBook.correctClock(word('w1', 30, 'start-1', -HOUR_MS));
    takeFrom(other, one);
    for (const store of [one, other])
      expect(store.dayBook.earlierDoses('cora')).toMatchObject([
        { givenAtMs: NOON + 10 * MINUTE_MS, clockTrusted: true },
      ]);
  });

  test('says nothing of what a third kiosk wrote', () => {
    const [one, other] = pair();
    dose(other, 't1', 20, { start: 'start-other', offMs: HOUR_MS, trusted: true });
    takeFrom(one, other);
    one.dayBook.correctClock(word('w1', 30));
    takeFrom(other, one);
    for (const store of [one, other]) expect(dated(store, 't1').clockTrusted).toBe(true);
  });

  test('dates a jug of its own start', () => {
    const [one, other] = pair();
    const jug = makeJug({
      id: 'jug-9',
      number: 9,
      mixedAtMs: NOON - YEAR_MS,
      clockTrusted: false,
      stock: null,
    });
    one.jugs.add(jug, { start: 'start-1', sinceMs: 0 });
    one.dayBook.correctClock(word('w1', 60));
    takeFrom(other, one);
    const { mixedAtMs, useByMs, clockTrusted } = other.jugs.find('jug-9') ?? {};
    expect({ mixedAtMs, useByMs, clockTrusted }).toMatchObject({
      mixedAtMs: one.jugs.find('jug-9')?.mixedAtMs,
      useByMs: one.jugs.find('jug-9')?.useByMs,
      clockTrusted: one.jugs.find('jug-9')?.clockTrusted,
    });
  });

  test('of a zone or time that nobody knows is not taken in', () => {
    const [one, other] = pair();
    one.dayBook.correctClock(word('w1', 60));
    const [told] = one.events.after(one.events.self().life, 0, 999).slice(-1);
    const { life, head } = other.received.held().find((each) => each.life === one.events.self().life) ?? {};
    expect(head).toBe((told?.sequence ?? 0) - 1);
    const body = { ...(told?.body as object), time_zone: 'Barn/Loft' };
    const spoilt = { ...told, life, body } as Event;
    other.whole(() => other.received.take([spoilt], HERE, nothingTouched()));
    expect(other.received.waiting()).toBe(1);
    expect(other.clockCorrections.ofStart('start-1')).toBeNull();
  });
});

/** What each kiosk does: doses, says the time, starts its board anew, or takes in what another holds. */
const step = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({ do: fc.constant('dose' as const), kiosk: fc.nat(2), trusted: fc.boolean() }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constant('word' as const),
      kiosk: fc.nat(2),
      hours: fc.integer({ min: -2, max: 2 }),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant('start' as const),
      kiosk: fc.nat(2),
      offHours: fc.integer({ min: -30, max: 30 }),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({ do: fc.constant('take' as const), kiosk: fc.nat(2), from: fc.nat(2) }),
  },
);

test('whatever is dosed, said and told in whatever order, all kiosks date all doses alike in the end', () => {
  fc.assert(
    fc.property(fc.array(step, { maxLength: 25 }), fc.infiniteStream(fc.nat(999)), (steps, chance) => {
      const stores = [bookStore(), createStore(':memory:'), createStore(':memory:')];
      const [herd] = stores as [Store, ...Store[]];
      for (const store of stores.slice(1)) takeFrom(store, herd);
      const boards = stores.map((_, place) => ({
        start: `start-${place}-0`,
        minutes: 0,
        offMs: 0,
        starts: 0,
      }));
      const ids: string[] = [];
      steps.forEach((now, place) => {
        const store = stores[now.kiosk] as Store;
        const board = boards[now.kiosk] as (typeof boards)[number];
        board.minutes += 10;
        if (now.do === 'dose') {
          dose(store, `t${place}`, board.minutes, { ...board, trusted: now.trusted });
          ids.push(`t${place}`);
        } else if (now.do === 'word')
          store.dayBook.correctClock(word(`w${place}`, board.minutes, board.start, now.hours * HOUR_MS));
        else if (now.do === 'start')
          Object.assign(board, {
            starts: board.starts + 1,
            start: `start-${now.kiosk}-${board.starts + 1}`,
            offMs: now.offHours * HOUR_MS,
          });
        else if (now.from !== now.kiosk) takeFrom(store, stores[now.from] as Store);
      });
      for (const to of [...stores, ...stores]) for (const from of stores) if (to !== from) takeFrom(to, from);
      // Two that held nothing take the lives in other orders; what names an animal that has not come waits.
      const lives = herd.received.held().map(({ life }) => life);
      const [first, second] = [createStore(':memory:'), createStore(':memory:')];
      takeFrom(first, herd, lives);
      const shuffled = lives
        .map((life) => [chance.next().value as number, life] as const)
        .sort()
        .map(([, life]) => life);
      takeFrom(second, herd, shuffled);
      const all = [...stores, first, second];
      for (const store of all) expect(store.received.waiting()).toBe(0);
      for (const id of ids)
        for (const store of all) expect([id, dated(store, id)]).toEqual([id, dated(herd, id)]);
      // Lines follow their records.
      for (const store of all)
        for (const { entry, place } of linesOf(store))
          if (entry.treatment.clockTrusted && entry.treatment.givenAtMs <= HERE.wallMs)
            expect(place.filedAtMs).toBe(entry.treatment.givenAtMs);
      expect(latest(second)).toEqual(latest(first));
      for (const store of all) store.close();
    }),
    { numRuns: Number(process.env['CLOCK_SCHEDULES'] ?? 25) },
  );
}, 600_000);

const linesOf = (store: Store) =>
  store.dayBook.page({}, null, 999).flatMap((line) => (line.kind === 'treatment' ? [line] : []));

/** The newest dated dose of the goat that is known, and until when it is kept back. */
function latest(store: Store) {
  const trusted = store.dayBook.earlierDoses('cora').filter(({ clockTrusted }) => clockTrusted);
  const until = store.dayBook
    .keepingBack('cora')
    .flatMap(({ treatment: { meat } }) => (meat.kind === 'at' ? [meat.atMs] : []));
  return [Math.max(...trusted.map(({ givenAtMs }) => givenAtMs)), Math.max(...until)];
}

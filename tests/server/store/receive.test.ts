import { describe, expect, test } from 'vitest';
import { newcomer } from '../../../core/herd/herd-animal.ts';
import type { Event } from '../../../core/hub/event.ts';
import { effectOf } from '../../../core/round/day-book.ts';
import { TOLD_RECORDS } from '../../../server/store/event-kinds.ts';
import { NotReceived } from '../../../server/store/receive.ts';
import { nothingTouched } from '../../../server/store/receive-records.ts';
import { createStore, type Store } from '../../../server/store/store.ts';
import { makeAnimal } from '../../core/make/animal.ts';
import { makeJug } from '../../core/make/jug.ts';

import { bookStore, given } from '../make/book.ts';
import { writeOneOfEach } from '../make/one-of-each.ts';

const HERE = { wallMs: Date.UTC(2027, 0, 1), clockTrusted: true };

function toldBy(store: Store, after = 0): Event[] {
  return store.events.after(store.events.self().life, after, 10_000);
}

function take(store: Store, events: readonly Event[], here = HERE) {
  const touched = nothingTouched();
  store.whole(() => store.received.take(events, here, touched));
  return touched;
}

/** What a kiosk holds of every life, told as it came. */
function heldBy(store: Store) {
  return store.received
    .held()
    .map(({ life, head }) => ({ life, events: store.events.after(life, 0, head) }))
    .filter(({ events }) => events.length > 0)
    .sort((a, b) => (a.life < b.life ? -1 : 1));
}

const herd = (store: Store) => store.animals.all().sort((a, b) => (a.id < b.id ? -1 : 1));

describe('what another kiosk told', () => {
  test('is written as that kiosk wrote it, told on as it came, and told by nobody else', () => {
    const [one, other] = [bookStore(), createStore(':memory:')];
    writeOneOfEach(one);
    const told = toldBy(one);
    const touched = take(other, told);
    expect(other.received.waiting()).toBe(0);
    expect(heldBy(other)).toEqual(heldBy(one));
    expect(toldBy(other)).toEqual([]);
    expect(herd(other)).toEqual(herd(one));
    expect(
      other.dayBook.newest(10).map(({ treatment, corrections }) => ({ treatment, corrections })),
    ).toEqual(one.dayBook.newest(10).map(({ treatment, corrections }) => ({ treatment, corrections })));
    expect(other.eggCounts.entries()).toEqual(one.eggCounts.entries());
    expect(other.reductionTests.all()).toEqual(one.reductionTests.all());
    expect(other.scores.newest('cora', 9)).toEqual(one.scores.newest('cora', 9));
    expect(other.weighings.newest('cora', 9)).toEqual(one.weighings.newest('cora', 9));
    expect(other.weightWords.of('cora')).toEqual(one.weightWords.of('cora'));
    expect(other.notes.newest('cora', 9)).toEqual(one.notes.newest('cora', 9));
    expect(touched.treatments).toEqual(new Set(['t1']));
    expect(touched.animals.has('cora')).toBe(true);
  });

  test('comes twice and is there once', () => {
    const [one, other] = [bookStore(), createStore(':memory:')];
    writeOneOfEach(one);
    take(other, toldBy(one));
    const before = heldBy(other);
    expect(take(other, toldBy(one))).toEqual(nothingTouched());
    expect(heldBy(other)).toEqual(before);
  });

  test.each([
    ['with a gap', (told: Event[]) => told.slice(1), 'gap'],
    ['out of order', (told: Event[]) => [...told].reverse(), 'out-of-order'],
    [
      'under a number that is held as another',
      (told: Event[]) => [{ ...told[0], id: 'x' } as Event],
      'sequence-reused',
    ],
  ])('is refused whole %s', (_, spoil, why) => {
    const [one, other] = [bookStore(), createStore(':memory:')];
    if (why === 'sequence-reused') take(other, toldBy(one));
    const before = heldBy(other);
    const refused = () => take(other, spoil(toldBy(one)));
    expect(refused).toThrow(NotReceived);
    expect(refused).toThrow(why);
    expect(heldBy(other)).toEqual(before);
  });

  test('waits where what it names has not come, and is taken in when it has', () => {
    const [first, second, third] = [bookStore(), createStore(':memory:'), createStore(':memory:')];
    take(second, toldBy(first));
    second.scores.add({
      animalId: 'cora',
      atMs: 5000,
      by: 'Kim',
      eyelid: 4,
      body: null,
      soiling: null,
      jaw: null,
      coat: null,
    });
    take(third, toldBy(second));
    expect(third.received.waiting()).toBe(1);
    expect(third.scores.newest('cora', 9)).toEqual([]);
    take(third, toldBy(first));
    expect(third.received.waiting()).toBe(0);
    expect(third.scores.newest('cora', 9)).toEqual(second.scores.newest('cora', 9));
    expect(heldBy(third)).toEqual(heldBy(second));
  });

  test('of a kind or form that is not known here waits, and stops nothing behind it', () => {
    const [one, other] = [bookStore(), createStore(':memory:')];
    one.notes.add('cora', { atMs: 5000, by: 'Kim', note: 'lame' });
    one.notes.add('dot', { atMs: 5000, by: 'Kim', note: 'lame' });
    const told = toldBy(one).map((event, place, all) =>
      place === all.length - 2 ? { ...event, body: { ...(event.body as object), note: 'sings' } } : event,
    );
    take(other, told);
    expect(other.received.waiting()).toBe(1);
    expect(other.notes.newest('cora', 9)).toEqual([]);
    expect(other.notes.newest('dot', 9)).toHaveLength(1);
    expect(other.received.held().find(({ life }) => life === one.events.self().life)?.head).toBe(told.length);
  });

  test('is taken back with its transaction', () => {
    const [one, other] = [bookStore(), createStore(':memory:')];
    expect(() =>
      other.whole(() => {
        other.received.take(toldBy(one), HERE, nothingTouched());
        throw new Error('the disk is full');
      }),
    ).toThrow('the disk is full');
    expect(heldBy(other)).toEqual([]);
    other.animals.add(newcomer(makeAnimal({ id: 'own', name: 'own', tag: null, lastWeight: null })), 'Kim');
    expect(toldBy(other)).toHaveLength(1);
  });
});

describe('kiosks that wrote apart', () => {
  function pair(): [Store, Store] {
    const [one, other] = [bookStore(), createStore(':memory:')];
    take(other, toldBy(one));
    return [one, other];
  }
  function meet(one: Store, other: Store): void {
    const [a, b] = [heldBy(one), heldBy(other)];
    for (const { events } of b) take(one, events);
    for (const { events } of a) take(other, events);
    expect(heldBy(one)).toEqual(heldBy(other));
    expect(herd(one)).toEqual(herd(other));
  }
  const find = (store: Store, id: string) => {
    const animal = store.animals.all().find((each) => each.id === id);
    if (animal === undefined) throw new Error(`there is no ${id}`);
    return animal;
  };
  const edit = (store: Store, id: string, over: object) => {
    const before = find(store, id);
    store.animals.change(before, { ...before, ...over }, 1000, 'Kim');
  };

  test('keep an animal field by field', () => {
    const [one, other] = pair();
    edit(one, 'anna', { pen: 'north' });
    edit(other, 'anna', { mark: 'blue' });
    meet(one, other);
    expect(find(one, 'anna')).toMatchObject({ pen: 'north', mark: 'blue' });
  });

  test('agree on one of two words on a field, and a later word wins whatever clock the first had', () => {
    const [one, other] = pair();
    edit(one, 'anna', { pen: 'north' });
    edit(other, 'anna', { pen: 'south' });
    meet(one, other);
    const { pen } = find(one, 'anna');
    expect(['north', 'south']).toContain(pen);
    edit(other, 'anna', { pen: 'east' });
    const far = toldBy(other).map((event) => ({
      ...event,
      clock: event.clock.replace(/^\d{15}/, '000000000000001'),
    }));
    take(one, far.slice(-1));
    expect(find(one, 'anna').pen).toBe('east');
  });

  test('let an animal leave in one way only', () => {
    const [one, other] = pair();
    edit(one, 'anna', { life: { kind: 'sold', atMs: 5000, by: 'Kim' } });
    edit(other, 'anna', { life: { kind: 'merged', intoId: 'bella', atMs: 6000, by: 'Lee' } });
    meet(one, other);
    expect(find(one, 'anna').life.kind).not.toBe('present');
  });

  test('that merged two records each into the other keep one of them on the farm', () => {
    const [one, other] = pair();
    edit(one, 'anna', { life: { kind: 'merged', intoId: 'bella', atMs: 5000, by: 'Kim' } });
    edit(other, 'bella', { life: { kind: 'merged', intoId: 'anna', atMs: 6000, by: 'Lee' } });
    meet(one, other);
    expect(find(one, 'anna').life.kind).toBe('present');
    expect(find(one, 'bella').life.kind).toBe('merged');
  });

  test('may have enrolled animals of one name and tag: both are kept, and neither kiosk makes a third', () => {
    const [one, other] = pair();
    const twin = (id: string) =>
      newcomer(makeAnimal({ id, name: 'Nell', tag: '982000123456789', lastWeight: null }));
    one.animals.add(twin('nell-1'), 'Kim');
    other.animals.add(twin('nell-2'), 'Lee');
    meet(one, other);
    expect(one.animals.all().filter(({ name }) => name === 'Nell')).toHaveLength(2);
    expect(() => one.animals.add(twin('nell-3'), 'Kim')).toThrow('another animal on the farm has this name');
    edit(one, 'nell-1', { pen: 'north' });
    expect(find(one, 'nell-1').pen).toBe('north');
  });

  test('keep both doses of an animal, and each is an earlier dose at both', () => {
    const [one, other] = pair();
    one.dayBook.addTreatment(given({ id: 't-one', animal: 'cora', atMs: HERE.wallMs }));
    other.dayBook.addTreatment(given({ id: 't-other', animal: 'cora', atMs: HERE.wallMs + 60_000 }));
    meet(one, other);
    for (const store of [one, other])
      expect(
        store.dayBook
          .ofAnimal('cora', 9)
          .map(({ treatment }) => treatment.id)
          .sort(),
      ).toEqual(['t-one', 't-other']);
    expect(one.dayBook.earlierDoses('cora').at(-1)?.givenAtMs).toBe(HERE.wallMs + 60_000);
  });

  test('that corrected one dose apart agree on what it means, and a later correction wins whatever the clocks', () => {
    const [one, other] = pair();
    one.dayBook.addTreatment(given({ id: 't1', animal: 'cora', atMs: HERE.wallMs }));
    meet(one, other);
    const correct = (store: Store, id: string, volumeMl: number) =>
      store.dayBook.addCorrection({
        id,
        treatmentId: 't1',
        what: { kind: 'wrong-volume', volumeMl },
        atMs: 7000,
        by: 'Kim',
      });
    correct(one, 'c-one', 3);
    correct(other, 'c-other', 4);
    meet(one, other);
    const meant = (store: Store) => {
      const entry = store.dayBook.entry('t1');
      if (entry === undefined) throw new Error('the dose is gone');
      return effectOf(entry).volumeMl;
    };
    expect(meant(one)).toBe(meant(other));
    correct(other, 'c-last', 5);
    const early = toldBy(other).map((event) => ({ ...event, clock: '000000000000001.00000' }));
    take(one, early.slice(-1));
    expect([meant(one), meant(other)]).toEqual([5, 5]);
  });

  test('a dose dated years ahead by a wrong clock is an undated one here, and does not move the clock', () => {
    const [one, other] = pair();
    const ahead = HERE.wallMs + 5 * 365 * 86_400_000;
    other.dayBook.addTreatment(given({ id: 't-far', animal: 'cora', atMs: ahead }));
    take(one, toldBy(other));
    expect(one.dayBook.earlierDoses('cora')).toMatchObject([{ givenAtMs: ahead, clockTrusted: false }]);
    expect(one.dayBook.latestGivenMs()).toBeNull();
    expect(one.dayBook.entry('t-far')?.treatment.clockTrusted).toBe(true);
  });

  test('a dated dose of another kiosk does not stand behind an undated one given here', () => {
    const [one, other] = pair();
    one.dayBook.addTreatment(given({ id: 't-undated', animal: 'cora', atMs: 5000, trusted: false }));
    other.dayBook.addTreatment(given({ id: 't-old', animal: 'cora', atMs: HERE.wallMs - 40 * 86_400_000 }));
    take(one, toldBy(other));
    expect(one.dayBook.earlierDoses('cora').at(-1)?.clockTrusted).toBe(false);
  });

  test('jugs of others are on no shelf here and take no number', () => {
    const [, other] = pair();
    expect(other.jugs.atHand()).toEqual([]);
    expect(other.jugs.find('jug-8')?.number).toBeLessThan(0);
    other.jugs.add(makeJug({ id: 'own', number: 1 }));
    expect(other.jugs.atHand().map(({ id }) => id)).toEqual(['own']);
    expect(toldBy(other)).toMatchObject([{ kind: 'jug', body: { id: 'own', number: 1 } }]);
  });
});

test('every kind of record that is told has a form in which it is taken in', async () => {
  const { TOLD_BODIES } = await import('../../../server/store/told-bodies.ts');
  expect(Object.keys(TOLD_BODIES).sort()).toEqual(Object.keys(TOLD_RECORDS).sort());
});

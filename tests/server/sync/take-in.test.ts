import { describe, expect, test } from 'vitest';
import { systemClock } from '../../../server/barn/clock.ts';
import { loadMemory } from '../../../server/barn/memory.ts';
import { HandBoard } from '../make/board-clocks.ts';
import { given } from '../make/book.ts';
import { bringToOffer, furnishShed, standingOffer, type TestBarn, testBarn } from '../make/test-barn.ts';

/** The barns of two sheds, the second with the herd of the first. */
function twoSheds(): { one: TestBarn; other: TestBarn } {
  const [one, other] = [testBarn(), testBarn(':memory:', furnishShed)];
  meet(one, other);
  return { one, other };
}

/** Each takes in what the other has and it has not. */
function meet(one: TestBarn, other: TestBarn, more = false): void {
  for (const [from, to] of [
    [one, other],
    [other, one],
  ] as const) {
    const held = new Map(to.store.received.held().map(({ life, head }) => [life, head]));
    for (const { life } of from.store.received.held()) {
      const events = from.store.events.after(life, held.get(life) ?? 0, 1000);
      expect(to.barn.receive(events, more)).toBeNull();
    }
  }
}

/** Gives the goat its dose at a shed. */
function giveGoat(shed: TestBarn): void {
  const offerId = bringToOffer(shed);
  expect(shed.send({ type: 'give', offerId, outcome: 'whole' })).toMatchObject({ ok: true });
}

function offerOf({ barn }: TestBarn) {
  const { phase } = barn.context.memory.round;
  return phase.step === 'offered' ? phase.offer : null;
}

const cautionsOf = ({ barn }: TestBarn) => {
  const { phase } = barn.context.memory.round;
  return phase.step === 'cautions'
    ? phase.decision.cautions.map(({ code, strength }) => [code, strength])
    : [];
};

describe('what another kiosk told', () => {
  test('is in memory as it would be after a start', () => {
    const { one, other } = twoSheds();
    one.send({ type: 'note-animal', animalId: 'goat-1', note: 'lame' });
    one.send({ type: 'edit-animal', animalId: 'goat-1', edit: { what: 'name', name: 'Tansy' } });
    giveGoat(one);
    meet(one, other);
    const { memory, store } = other.barn.context;
    const anew = loadMemory(store, memory.settings);
    expect(memory.animals).toEqual(anew.animals);
    expect(memory.animals.map(({ name }) => name)).toContain('Tansy');
    expect(memory.earlier).toEqual(anew.earlier);
    expect(memory.earlier).toHaveLength(1);
    expect(memory.recent).toEqual(anew.recent);
    expect(memory.keepingBack).toEqual(anew.keepingBack);
    expect(memory.gone).toEqual(anew.gone);
  });

  test('ends the offer of the animal that was dosed there, and stops a further dose', () => {
    const { one, other } = twoSheds();
    bringToOffer(other);
    giveGoat(one);
    meet(one, other);
    expect(offerOf(other)).toBeNull();
    expect(cautionsOf(other)).toContainEqual(['same-active-today', 'stop']);
  });

  test('of another animal leaves an offer as it is', () => {
    const { one, other } = twoSheds();
    other.send({ type: 'take-jug', jugId: 'jug-1' });
    other.send({ type: 'prove-jug', jugId: 'jug-1', deliberate: false });
    other.weigh(0, 1000);
    other.send({ type: 'pick-animal', animalId: 'goat-2' });
    other.weigh(15_400, 4000);
    const before = standingOffer(other);
    giveGoat(one);
    meet(one, other);
    expect(offerOf(other)).toBe(before);
  });

  test('of a dose that was given here too is an alarm at both, once, until it is read', () => {
    const { one, other } = twoSheds();
    for (const shed of [one, other]) giveGoat(shed);
    meet(one, other);
    meet(one, other);
    for (const { store } of [one, other]) {
      const [pair, ...more] = store.apart.unseen();
      expect(more).toEqual([]);
      expect([pair?.one, pair?.other].sort()).toEqual(
        store.dayBook
          .newest(9)
          .map(({ treatment }) => treatment.id)
          .sort(),
      );
    }
    const [pair] = one.store.apart.unseen();
    if (pair === undefined) throw new Error('there is no alarm');
    one.store.apart.seen(pair, 5000, 'Wren');
    expect(one.store.apart.unseen()).toEqual([]);
    expect(other.store.apart.unseen()).toHaveLength(1);
  });

  describe('and of which more is to come', () => {
    const named = ({ barn }: TestBarn) => barn.context.memory.animals.map(({ name }) => name);
    function behind(): { one: TestBarn; other: TestBarn } {
      const { one, other } = twoSheds();
      one.send({ type: 'edit-animal', animalId: 'goat-1', edit: { what: 'name', name: 'Tansy' } });
      meet(one, other, true);
      expect(named(other)).not.toContain('Tansy');
      return { one, other };
    }

    test('is on the disk, and in memory with the last of it', () => {
      const { one, other } = behind();
      expect(other.store.animals.find('goat-1')?.name).toBe('Tansy');
      one.send({ type: 'note-animal', animalId: 'goat-2', note: 'lame' });
      meet(one, other);
      expect(named(other)).toContain('Tansy');
      expect(other.barn.context.memory.unread).toBeNull();
    });

    test('is in memory before anything that is asked here is judged', () => {
      const { one, other } = behind();
      giveGoat(one);
      meet(one, other, true);
      expect(other.barn.context.memory.earlier).toEqual([]);
      other.weigh(0, 1000);
      other.send({ type: 'take-jug', jugId: 'jug-1' });
      other.send({ type: 'prove-jug', jugId: 'jug-1', deliberate: false });
      other.send({ type: 'pick-animal', animalId: 'goat-1' });
      other.weigh(15_400, 4000);
      expect(cautionsOf(other)).toContainEqual(['same-active-today', 'stop']);
    });

    test('ends the offer it touches at once', () => {
      const { one, other } = twoSheds();
      bringToOffer(other);
      giveGoat(one);
      meet(one, other, true);
      expect(offerOf(other)).toBeNull();
    });

    test('is in memory after five seconds, though nothing more comes', () => {
      const { other } = behind();
      other.clock.pass(4900);
      other.barn.tick();
      expect(named(other)).not.toContain('Tansy');
      other.clock.pass(100);
      other.barn.tick();
      expect(named(other)).toContain('Tansy');
    });
  });

  test('of a clock that was set there dates its doses: an undated one asks, and one of today stops', () => {
    const board = new HandBoard(Date.UTC(1987, 3, 12, 11, 30));
    const clock = systemClock(Date.UTC(2026, 0, 1), board);
    const [one, other] = [testBarn(':memory:', undefined, { clock }), testBarn(':memory:', furnishShed)];
    const { wallMs, board: at = null } = clock.now();
    const dose = given({ id: 't1', animal: 'goat-1', jug: 'jug-1', atMs: wallMs, trusted: false });
    one.store.dayBook.addTreatment({ ...dose, board: at });
    meet(one, other);
    other.weigh(0, 1000);
    other.send({ type: 'take-jug', jugId: 'jug-1' });
    other.send({ type: 'prove-jug', jugId: 'jug-1', deliberate: false });
    other.send({ type: 'pick-animal', animalId: 'goat-1' });
    other.weigh(15_400, 4000);
    expect(cautionsOf(other)).toContainEqual(['clock-untrusted', 'ask']);
    board.pass(10 * 60_000);
    expect(one.send({ type: 'set-clock', at: '2027-04-12T11:40' })).toMatchObject({ ok: true });
    meet(one, other);
    const { memory, store } = other.barn.context;
    expect(memory.recent[0]?.treatment).toMatchObject({
      givenAtMs: Date.UTC(2027, 3, 12, 11, 30),
      clockTrusted: true,
    });
    expect(cautionsOf(other)).toContainEqual(['same-active-today', 'stop']);
    const anew = loadMemory(store, memory.settings);
    for (const part of ['animals', 'earlier', 'recent', 'keepingBack', 'jugs'] as const)
      expect(memory[part]).toEqual(anew[part]);
  });

  test('a disk that refuses leaves memory as it was', () => {
    const { one, other } = twoSheds();
    one.send({ type: 'edit-animal', animalId: 'goat-1', edit: { what: 'name', name: 'Tansy' } });
    const held = other.store.received.held();
    const { life } = one.store.events.self();
    const events = one.store.events.after(life, held.find((each) => each.life === life)?.head ?? 0, 99);
    const before = other.barn.context.memory;
    other.store.close();
    expect(() => other.barn.receive(events, false)).toThrow();
    expect(other.barn.context.memory).toBe(before);
  });
});

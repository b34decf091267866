import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { grams } from '../../../core/quantity/mass.ts';
import { type TestBarn, testBarn } from '../make/test-barn.ts';

const QUART_ML = 946.352946;

/** Shows the bench a load for a second, ten times. */
function bench(test_: TestBarn, load: number): void {
  for (let i = 0; i < 12; i += 1) {
    test_.clock.pass(100);
    test_.barn.read({
      role: 'bench',
      mass: grams(load),
      division: grams(1),
      stability: 'stable',
      net: false,
      zero: load === 0,
      at: test_.clock.uptimeMs,
    });
  }
}

function begin(test_: TestBarn): void {
  test_.send({ type: 'mix-start', packetId: 'levamisole-52g' });
  test_.send({ type: 'mix-dilution', perPacketMl: QUART_ML, deliberate: false });
  test_.send({ type: 'mix-water', celsius: 20 });
}

/** Mixes a quart in the jug of 312 g that stands on the bench. */
function fill(test_: TestBarn): void {
  bench(test_, 312 + 902);
  test_.send({ type: 'mix-poured' });
  bench(test_, 312 + 902 + 52);
  test_.send({ type: 'mix-dissolved' });
  test_.send({ type: 'mix-in-service' });
}

function mixFirst(test_: TestBarn): void {
  begin(test_);
  bench(test_, 312);
  test_.send({ type: 'mix-jug-placed' });
  test_.send({ type: 'mix-jug-is-empty', vesselId: null, deliberate: true });
  fill(test_);
}

function newest(test_: TestBarn) {
  const [jug] = test_.barn.context.memory.jugs;
  if (jug === undefined) throw new Error('no jug was mixed');
  return jug;
}

test('a jug is learned once by the keeper’s word, and known by its weight after a restart', () => {
  const path = join(mkdtempSync(join(tmpdir(), 'barn-')), 'test.sqlite');
  const first = testBarn(path);
  mixFirst(first);
  expect(newest(first)).toMatchObject({ number: 2, weighed: { letter: 'A', empty: { value: 312 } } });
  first.store.close();

  const second = testBarn(path);
  expect(newest(second).weighed).toEqual(newest(first).weighed);
  begin(second);
  bench(second, 314);
  second.send({ type: 'mix-jug-placed' });
  expect(second.barn.context.memory.mixing).toMatchObject({ step: 'pour', vessel: { letter: 'A' } });
});

test('a full jug set down for an empty one is asked about, and its mix is not mixed into', () => {
  const test_ = testBarn();
  mixFirst(test_);
  begin(test_);
  bench(test_, 312 + 902 + 52);
  test_.send({ type: 'mix-jug-placed' });
  expect(test_.barn.context.memory.mixing).toMatchObject({ step: 'new-jug', doubt: { kind: 'holds-mix' } });
  expect(test_.send({ type: 'mix-jug-is-empty', vesselId: null, deliberate: true })).toMatchObject({
    code: 'holds-mix',
  });
});

test('a new mix in the same jug takes the place of the old one', () => {
  const test_ = testBarn();
  mixFirst(test_);
  const before = newest(test_).id;
  begin(test_);
  bench(test_, 0);
  bench(test_, 312);
  test_.send({ type: 'mix-jug-placed' });
  fill(test_);
  const old = test_.barn.context.memory.jugs.find(({ id }) => id === before);
  expect(newest(test_).number).toBe(3);
  expect(old?.discardedAtMs).not.toBeNull();
});

test('the jug in hand is proved on the bench, and another weight is refused with both masses', () => {
  const test_ = testBarn();
  test_.send({ type: 'jug-discard', jugId: 'jug-1' });
  mixFirst(test_);
  const jugId = newest(test_).id;
  test_.send({ type: 'take-jug', jugId });
  bench(test_, 900);
  expect(test_.send({ type: 'prove-on-bench', jugId })).toMatchObject({
    code: 'jug-weighs-otherwise',
    message: expect.stringMatching(/it weighs 900 g, jug 2 should weigh 1,266 g/),
  });
  bench(test_, 1266);
  expect(test_.send({ type: 'prove-on-bench', jugId }).ok).toBe(true);
  expect(test_.barn.context.memory.round.phase.step).toBe('visit');
});

test('when the disk refuses a new jug, it is not known and the question stands', () => {
  const test_ = testBarn();
  begin(test_);
  bench(test_, 312);
  test_.send({ type: 'mix-jug-placed' });
  const { learn } = test_.store.vessels;
  test_.store.vessels.learn = () => {
    throw new Error('disk full');
  };
  expect(test_.send({ type: 'mix-jug-is-empty', vesselId: null, deliberate: true })).toMatchObject({
    code: 'not-written',
  });
  expect(test_.barn.context.memory).toMatchObject({ mixing: { step: 'new-jug' }, vessels: [] });
  test_.store.vessels.learn = learn;
  expect(test_.send({ type: 'mix-jug-is-empty', vesselId: null, deliberate: true }).ok).toBe(true);
});

test('a bench that goes silent in the middle of a pour is not believed until its jug is seen again', () => {
  const test_ = testBarn();
  begin(test_);
  bench(test_, 312);
  test_.send({ type: 'mix-jug-placed' });
  test_.send({ type: 'mix-jug-is-empty', vesselId: null, deliberate: true });
  bench(test_, 312 + 500);
  test_.links.bench = 'silent';
  test_.barn.linkChanged('bench', false);
  expect(test_.send({ type: 'mix-poured' })).toMatchObject({ code: 'bench-not-ready' });
  test_.links.bench = 'ready';
  bench(test_, 312 + 902);
  expect(test_.send({ type: 'mix-poured' })).toMatchObject({ code: 'jug-not-back' });
});

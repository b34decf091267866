import { expect, test } from 'vitest';
import { needFor } from '../../../core/dosing/need.ts';
import { grams } from '../../../core/quantity/mass.ts';
import { USUAL_NEED } from '../../../core/weighing/settle.ts';
import { syringesOnHand } from '../../../server/barn/memory.ts';
import { needAtHand } from '../../../server/barn/need-at-hand.ts';
import { makeRegimen } from '../../core/make/regimen.ts';
import { GOAT, type TestBarn, testBarn } from '../make/test-barn.ts';

function need(test: TestBarn): number {
  return needAtHand(test.barn.context.memory);
}

/** What the rules of these ids ask for at what stands on the deck. */
function asked(test: TestBarn, ...ids: string[]): number {
  const { memory } = test.barn.context;
  const [jug] = memory.jugs;
  const { level } = memory.deck;
  if (jug === undefined || level === null) throw new Error('no jug, or nothing on the deck');
  return needFor({
    weight: grams(level.grams),
    division: grams(50),
    regimens: ids.map((id) => makeRegimen({}, id)),
    jug,
    syringes: syringesOnHand(memory),
  });
}

function stepOn(test: TestBarn, weight: number): void {
  test.weigh(0, 1000);
  test.weigh(weight, 700);
}

test('with no jug in hand the weight is held as usual', () => {
  const test_ = testBarn();
  stepOn(test_, 15_000);
  expect(need(test_)).toBe(USUAL_NEED);
});

test('the need follows the jug in hand, what stands on the deck, and which animal it is', () => {
  const test_ = testBarn();
  test_.send({ type: 'take-jug', jugId: 'jug-1' });
  test_.send({ type: 'prove-jug', jugId: 'jug-1', deliberate: false });
  stepOn(test_, 15_000);
  expect(need(test_)).not.toBe(USUAL_NEED);
  expect(need(test_)).toBe(asked(test_, 'levamisole-goat', 'levamisole-sheep'));
  test_.send({ type: 'read-tag', tag: GOAT.tag ?? '' });
  expect(need(test_)).toBe(asked(test_, 'levamisole-goat'));
  test_.send({ type: 'put-jug-down' });
  expect(need(test_)).toBe(USUAL_NEED);
});

test('a restless animal is held by the need of the dose, not by the usual one', () => {
  const test_ = testBarn();
  test_.send({ type: 'take-jug', jugId: 'jug-1' });
  test_.send({ type: 'prove-jug', jugId: 'jug-1', deliberate: false });
  test_.weigh(0, 1000);
  // One reading in two is 2 % further up, which no second of watching averages to the usual need.
  for (let i = 0; i < 24; i += 1) test_.weigh(15_000 + 200 * (Math.floor(i / 4) % 2), 100);
  const { deck } = test_.barn.context.memory;
  expect(deck.held).not.toBeNull();
  expect((deck.level?.uncertainty ?? 0) / 15_000).toBeLessThan(need(test_));
});

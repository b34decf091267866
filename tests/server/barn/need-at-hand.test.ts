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

/** Seconds until a goat that shifts its weight all the time is held. */
function secondsToHold(test: TestBarn): number {
  test.weigh(0, 1000);
  for (let i = 0; i < 150; i += 1) {
    // Twice in a walk of a second the load rests: on the fore feet, then on all but one.
    const landed = i < 5 ? 0.55 : i < 10 ? 0.8 : 1;
    test.weigh(
      Math.round(300 * landed * (1 + 0.011 * Math.sin(i / 2.2) + 0.008 * Math.sin(i / 5))) * 50,
      100,
    );
    if (test.barn.context.memory.deck.held !== null) return i / 10;
  }
  throw new Error('never held');
}

test('a restless animal is held sooner for a coarse dose than with no jug in hand', () => {
  const idle = testBarn();
  const dosing = testBarn();
  dosing.send({ type: 'take-jug', jugId: 'jug-1' });
  dosing.send({ type: 'prove-jug', jugId: 'jug-1', deliberate: false });
  expect(secondsToHold(dosing)).toBeLessThan(secondsToHold(idle));
  expect(need(dosing)).toBeGreaterThan(USUAL_NEED);
});

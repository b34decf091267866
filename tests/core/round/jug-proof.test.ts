import { describe, expect, test } from 'vitest';
import { mgPerMl } from '../../../core/quantity/strength.ts';
import { reduceRound } from '../../../core/round/reduce.ts';
import { FRESH_ROUND, type RoundEvent, type RoundWorld } from '../../../core/round/state.ts';
import { makeJug } from '../make/jug.ts';
import { farm, offeredRound, phaseAt, play, TO_VISIT } from '../make/round.ts';
import { hoursAgo } from '../make/time.ts';

const jug = makeJug();
const weaker = makeJug({ id: 'jug-8', number: 8, strength: mgPerMl(24.727) });
const JUGS: RoundEvent = { type: 'world-changed', what: 'jugs' };

function prove(deliberate: boolean, over: Partial<RoundWorld>) {
  const taken = play(FRESH_ROUND, TO_VISIT.slice(0, 1), (ms) => farm(ms, over));
  return reduceRound(taken, { type: 'prove-jug', jugId: 'jug-7', deliberate }, farm(5, over));
}

describe('the jug in hand is proved', () => {
  test('by a light press while it is the only live one of its medicine', () => {
    expect(prove(false, { jugs: [jug] }).round.phase.step).toBe('visit');
  });

  test('only by a held press while another strength of it is live', () => {
    expect(prove(false, { jugs: [jug, weaker] }).refused).toBe('needs-held-press');
    expect(prove(true, { jugs: [jug, weaker] }).round.phase.step).toBe('visit');
  });

  test('only by a held press while a clock nobody trusts says the other one is too old', () => {
    const seemsOld = { ...weaker, useByMs: hoursAgo(1) };
    expect(prove(false, { jugs: [jug, seemsOld], clockTrusted: false }).refused).toBe('needs-held-press');
  });

  test('again, when a rival is mixed while an offer stands, and the offer waits for its answer', () => {
    const step = reduceRound(offeredRound(), JUGS, farm(50, { jugs: [jug, weaker] }));
    expect(step.round.phase).toEqual({ step: 'prove-jug', jugId: 'jug-7', visit: null });
    expect(step.round.unanswered).toHaveLength(1);
  });
});

describe('a jug is not taken', () => {
  test.each([
    ['past its use-by', { useByMs: hoursAgo(1) }],
    ['empty', { drawn: jug.volume }],
    ['poured away', { discardedAtMs: hoursAgo(1) }],
  ])('when it is %s', (_, over) => {
    const step = reduceRound(
      FRESH_ROUND,
      { type: 'take-jug', jugId: 'jug-7' },
      farm(0, { jugs: [makeJug(over)] }),
    );
    expect(step.refused).toBe('jug-out-of-life');
  });

  test('but when only the date is against it and the clock is not trusted, it is, and the dose will ask', () => {
    const world = farm(0, { jugs: [makeJug({ useByMs: hoursAgo(1) })], clockTrusted: false });
    const step = reduceRound(FRESH_ROUND, { type: 'take-jug', jugId: 'jug-7' }, world);
    expect(phaseAt(step.round, 'prove-jug').jugId).toBe('jug-7');
  });
});

describe('a jug poured away', () => {
  test('ends the round with it, and the offer from it waits for its answer', () => {
    const step = reduceRound(
      offeredRound(),
      JUGS,
      farm(50, { jugs: [makeJug({ discardedAtMs: hoursAgo(0) })] }),
    );
    expect(step.round.phase.step).toBe('no-jug');
    expect(step.round.unanswered).toHaveLength(1);
    expect(step.effects).toMatchObject([{ do: 'record-lapse', reason: 'jug-changed' }]);
  });
});

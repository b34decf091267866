import { describe, expect, test } from 'vitest';
import { grams } from '../../../core/quantity/mass.ts';
import { reduceRound } from '../../../core/round/reduce.ts';
import { FRESH_ROUND, type RoundEvent } from '../../../core/round/state.ts';
import { makeHeld } from '../make/held.ts';
import { farm, offerOf, phaseAt, play, TO_VISIT, toWeighed, wand, weighed } from '../make/round.ts';
import { makeSyringe } from '../make/syringe.ts';

const FAR: RoundEvent = { type: 'accept', code: 'weight-far-from-last' };
const CROSSES: RoundEvent = { type: 'accept', code: 'interval-crosses-ceiling' };

describe('an accepted ask', () => {
  const cautioned = play(FRESH_ROUND, toWeighed('cora'));

  test('lets the offer through, and stands on it', () => {
    expect(offerOf(play(cautioned, [FAR])).accepted.map(({ code }) => code)).toEqual([
      'weight-far-from-last',
    ]);
  });

  test('does not count for the next hold of the same visit', () => {
    const two = play(FRESH_ROUND, [...TO_VISIT, wand('cora'), { type: 'stepped-on' }, weighed(40)]);
    const accepted = play(two, [FAR]);
    expect(play(accepted, [weighed(45, 5)]).phase.step).toBe('cautions');
  });

  test('does not count for the next animal', () => {
    const next = play(cautioned, [FAR, { type: 'stepped-off' }, { type: 'stepped-on' }]);
    const round = play(next, [wand('cora'), weighed(40, 9)]);
    expect(phaseAt(round, 'cautions').accepted).toEqual([]);
  });

  test('is refused while the platform is not ready', () => {
    expect(reduceRound(cautioned, FAR, farm(9, { platformReady: false })).refused).toBe('platform-not-ready');
  });

  test('leaves the other asks open', () => {
    const unsure = { type: 'held', held: makeHeld(40, { uncertainty: grams(12_000) }) } as const;
    const both = play(FRESH_ROUND, [...TO_VISIT, wand('cora'), { type: 'stepped-on' }, unsure]);
    expect(play(both, [FAR]).phase.step).toBe('cautions');
    expect(play(both, [FAR, CROSSES]).phase.step).toBe('offered');
  });

  test('does not count once its numbers have changed: what was accepted was another dose', () => {
    const unsure = { type: 'held', held: makeHeld(40, { uncertainty: grams(12_000) }) } as const;
    const coarse = (ms: number) => farm(ms, { syringes: [makeSyringe(60, 1)] });
    const fine = (ms: number) => farm(ms, { syringes: [makeSyringe(12, 0.2)] });
    const events: RoundEvent[] = [...TO_VISIT, wand('cora'), { type: 'stepped-on' }, unsure, CROSSES];
    const accepted = play(FRESH_ROUND, events, fine);
    const changed = reduceRound(accepted, { type: 'world-changed', what: 'syringes' }, coarse(20)).round;
    const highs = [accepted, changed].map(
      (round) =>
        phaseAt(round, 'cautions').decision.cautions.find(({ code }) => code === CROSSES.code)?.values[
          'high'
        ],
    );
    expect(highs[1]).toBeGreaterThan(highs[0] ?? Number.POSITIVE_INFINITY);
    expect(reduceRound(changed, FAR, coarse(30)).round.phase.step).toBe('cautions');
  });
});

import { describe, expect, test } from 'vitest';
import { earlierDoses, pairUp } from '../../../core/round/day-book.ts';
import { reduceRound } from '../../../core/round/reduce.ts';
import { FRESH_ROUND, type Round, type RoundWorld } from '../../../core/round/state.ts';
import { makeJug } from '../make/jug.ts';
import { farm, offeredRound, offerOf, play, storedBy, toWeighed } from '../make/round.ts';
import { hoursAgo } from '../make/time.ts';

/** The cautions against a weighed Anna, as "code strength". */
function cautionsIn(over: Partial<RoundWorld>): string[] {
  const { phase }: Round = play(FRESH_ROUND, toWeighed('anna'), (ms) => farm(ms, over));
  if (phase.step !== 'cautions') return [];
  return phase.decision.cautions.map(({ code, strength }) => `${code} ${strength}`);
}

/** One whole dose of Anna's in the day book, given at a wall time by a clock that was trusted or not. */
function book(givenAtMs: number, clockTrusted: boolean) {
  const offerId = offerOf(offeredRound()).id;
  const [treatment] = storedBy([
    reduceRound(offeredRound(), { type: 'give', offerId, outcome: 'whole' }, farm(5, { clockTrusted })),
  ]);
  if (treatment === undefined) throw new Error('nothing stored');
  return earlierDoses(pairUp([{ ...treatment, givenAtMs }], []));
}

describe('while the clock is not trusted', () => {
  test('every dose asks, with the date of the jug and of the last treatment', () => {
    const jug = makeJug();
    const last = hoursAgo(3);
    const round = play(FRESH_ROUND, toWeighed('anna'), (ms) =>
      farm(ms, { clockTrusted: false, earlier: book(last, true) }),
    );
    expect(round.phase).toMatchObject({
      step: 'cautions',
      decision: {
        cautions: expect.arrayContaining([
          {
            code: 'clock-untrusted',
            strength: 'ask',
            values: { mixedAtMs: jug.mixedAtMs, lastGivenAtMs: last },
          },
        ]),
      },
    });
  });

  test('a dose never given before asks as well', () => {
    expect(cautionsIn({ clockTrusted: false })).toContain('clock-untrusted ask');
  });

  test('the record says that its times are provisional', () => {
    const world = farm(5, { clockTrusted: false });
    const offerId = offerOf(offeredRound()).id;
    const step = reduceRound(offeredRound(), { type: 'give', offerId, outcome: 'whole' }, world);
    expect(storedBy([step])[0]?.clockTrusted).toBe(false);
  });
});

describe('once the clock is trusted', () => {
  test('a dose of this morning stops a second one today', () => {
    expect(cautionsIn({ earlier: book(hoursAgo(2), true) })).toContain('same-active-today stop');
  });

  test('a clock that was set back does not make a dose of this morning look harmless', () => {
    expect(cautionsIn({ earlier: book(hoursAgo(-2), true) })).toContain('same-active-today stop');
  });

  test('a dose logged minutes ago under a clock that said the year 2000 still makes it hesitate', () => {
    const found = cautionsIn({ earlier: book(Date.UTC(2000, 0, 1, 9), false) });
    expect(found.filter((text) => !text.endsWith('note'))).not.toEqual([]);
  });

  test('a jug mixed while it was not trusted is of unknown age, and the dose asks', () => {
    const jug = makeJug({
      clockTrusted: false,
      mixedAtMs: hoursAgo(-24 * 365),
      useByMs: hoursAgo(-24 * 366),
    });
    expect(cautionsIn({ jugs: [jug] })).toContain('clock-untrusted ask');
  });

  test('with nothing given before, nothing about time stands in the way', () => {
    expect(cautionsIn({})).toEqual([]);
  });
});

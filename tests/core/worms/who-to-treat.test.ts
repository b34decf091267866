import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { AgainstMob } from '../../../core/growth/mob.ts';
import { DAY_MS } from '../../../core/moment.ts';
import { refugiaOf, shareToLeave } from '../../../core/worms/refugia.ts';
import {
  BODY_CONDITIONS,
  bodyConditionFrom,
  EYELIDS,
  eyelidFrom,
  latestScores,
  type Scores,
  SOILINGS,
  soilingFrom,
} from '../../../core/worms/scores.ts';
import { SHIPPED_RULES, type TreatRules } from '../../../core/worms/treat-rules.ts';
import { adviseTreatment, type Signs, type TreatAdvice } from '../../../core/worms/who-to-treat.ts';

const NOW = 400 * DAY_MS;

function scored(change: Partial<Scores>): Scores {
  return { atMs: NOW, by: 'Ida', eyelid: null, body: null, soiling: null, jaw: null, coat: null, ...change };
}

function advise(
  scores: Partial<Scores> | null,
  change: Partial<Signs> = {},
  rules: TreatRules = SHIPPED_RULES,
) {
  const signs: Signs = {
    animal: { id: 'a', species: 'goat', class: 'female' },
    scores: scores && scored(scores),
    gain: null,
    lastDoseAtMs: null,
    ...change,
  };
  return adviseTreatment(signs, rules, 'high', NOW);
}

function gaining(standing: AgainstMob['standing']): AgainstMob {
  return { mobMean: 140, mobMedian: 140, difference: standing === 'behind' ? -60 : 10, standing, others: 20 };
}

describe('whom to treat', () => {
  test.each([
    ['a swollen jaw', { jaw: 'swollen', eyelid: 1, body: 3 }, 'treat', 'jaw-swollen'],
    ['an eyelid of 4', { eyelid: 4, body: 3 }, 'treat', 'eyelid-pale'],
    ['an eyelid of 5', { eyelid: 5 }, 'treat', 'eyelid-pale'],
    ['a body condition of 2', { eyelid: 2, body: 2 }, 'treat', 'thin'],
    ['an eyelid of 3 and a soiled tail', { eyelid: 3, soiling: 3 }, 'treat', 'eyelid-middling'],
    ['an eyelid of 3 and a fit body', { eyelid: 3, body: 3 }, 'look-again', 'eyelid-middling'],
    ['a soiled tail alone', { eyelid: 1, soiling: 4 }, 'look-again', 'soiled'],
    ['a rough coat', { eyelid: 2, coat: 'rough' }, 'look-again', 'coat-rough'],
    ['a red eyelid and a fit body', { eyelid: 1, body: 3 }, 'leave', 'eyelid-red'],
    ['a red eyelid alone', { eyelid: 1 }, 'look-again', 'eyelid-alone'],
    ['a red eyelid and a sound jaw', { eyelid: 1, jaw: 'none' }, 'look-again', 'eyelid-alone'],
  ] as const)('%s', (_name, scores, advice, first) => {
    const found = advise(scores);
    expect(found.advice).toBe(advice);
    expect(found.reasons.map(({ sign }) => sign)).toContain(first);
    expect(found.reasons[0]?.sign).not.toBeUndefined();
  });

  test('nothing scored asks for a look', () => {
    expect(advise(null)).toMatchObject({ advice: 'look-again', reasons: [{ sign: 'not-scored' }] });
    expect(advise({})).toMatchObject({ advice: 'look-again', reasons: [{ sign: 'not-scored' }] });
  });

  test('a gain behind the mob asks for a look, and treats beside a middling eyelid', () => {
    expect(advise({ eyelid: 2, body: 3 }, { gain: gaining('behind') }).advice).toBe('look-again');
    expect(advise({ eyelid: 3, body: 3 }, { gain: gaining('behind') }).advice).toBe('treat');
    expect(advise({ eyelid: 2 }, { gain: gaining('with-the-mob') }).advice).toBe('leave');
  });

  test('a pale eyelid within four weeks of a dose is looked at again', () => {
    const lately = { lastDoseAtMs: NOW - 14 * DAY_MS };
    expect(advise({ eyelid: 4, body: 3 }, lately).advice).toBe('look-again');
    expect(advise({ eyelid: 4, body: 3 }, { lastDoseAtMs: NOW - 28 * DAY_MS }).advice).toBe('treat');
    expect(advise({ eyelid: 4, jaw: 'swollen' }, lately).advice).toBe('treat');
  });

  test('cattle have no eyelid score', () => {
    const calf = { animal: { id: 'c', species: 'cattle', class: 'young' } } as const;
    expect(advise({ eyelid: 5, body: 3 }, calf).advice).toBe('leave');
  });

  test('a farm may set the eyelid it treats from for a class', () => {
    const own: TreatRules = {
      ...SHIPPED_RULES,
      byClass: {
        ...SHIPPED_RULES.byClass,
        high: {
          ...SHIPPED_RULES.byClass.high,
          young: {
            ...SHIPPED_RULES.byClass.high.young,
            treatEyelid: { value: 3, evidence: 'published', source: 'own' },
          },
        },
      },
    };
    const kid = { animal: { id: 'k', species: 'goat', class: 'young' } } as const;
    expect(advise({ eyelid: 3, body: 3 }, kid, own).advice).toBe('treat');
    expect(advise({ eyelid: 3, body: 3 }, {}, own).advice).toBe('look-again');
  });

  test('weekly in the high season, monthly in the low', () => {
    expect(advise({ eyelid: 1 }).lookAgainAtMs).toBe(NOW + 7 * DAY_MS);
    const low = adviseTreatment(
      { animal: { id: 'a', species: 'goat', class: 'male' }, scores: null, gain: null, lastDoseAtMs: null },
      SHIPPED_RULES,
      'low',
      NOW,
    );
    expect(low.lookAgainAtMs).toBe(NOW + 30 * DAY_MS);
  });

  test('every advice has a reason with a source that speaks for it, and worse never means less', () => {
    const any = fc.record({
      eyelid: fc.constantFrom(...EYELIDS),
      body: fc.constantFrom(...BODY_CONDITIONS),
      soiling: fc.constantFrom(...SOILINGS),
    });
    const rank = { leave: 0, 'look-again': 1, treat: 2 } as const;
    fc.assert(
      fc.property(any, (scores) => {
        const found = advise(scores);
        expect(found.reasons.every(({ source }) => source.length > 0)).toBe(true);
        const paler = eyelidFrom(scores.eyelid + 1);
        if (paler !== null) {
          expect(rank[advise({ ...scores, eyelid: paler }).advice]).toBeGreaterThanOrEqual(
            rank[found.advice],
          );
        }
        const thinner = bodyConditionFrom(scores.body - 0.5);
        if (thinner !== null) {
          expect(rank[advise({ ...scores, body: thinner }).advice]).toBeGreaterThanOrEqual(
            rank[found.advice],
          );
        }
      }),
    );
  });
});

describe('scores', () => {
  test('are steps, never rounded', () => {
    expect([eyelidFrom(3), eyelidFrom(0), eyelidFrom(3.5)]).toEqual([3, null, null]);
    expect([bodyConditionFrom(2.5), bodyConditionFrom(2.25), bodyConditionFrom(5.5)]).toEqual([
      2.5,
      null,
      null,
    ]);
    expect([soilingFrom(0), soilingFrom(6)]).toEqual([0, null]);
  });

  test('of several days are the newest of each sign', () => {
    const history = [
      scored({ atMs: NOW, eyelid: 2 }),
      scored({ atMs: NOW - DAY_MS, eyelid: 4, body: 3 }),
      scored({ atMs: NOW - 30 * DAY_MS, soiling: 5 }),
    ];
    expect(latestScores(history, NOW - 7 * DAY_MS)).toEqual(scored({ eyelid: 2, body: 3 }));
    expect(latestScores(history, NOW + 1)).toBeNull();
  });
});

describe('the share to leave undosed', () => {
  test.each([
    [0, 1],
    [50, 1],
    [74, 1],
    [75, 0.5],
    [100, 0.5],
    [150, 0.3],
    [200, 0.25],
    [250, 0.2],
    [300, 0.15],
    [350, 0.15],
    [400, 0.1],
    [500, 0.1],
    [501, null],
    [-1, null],
    [Number.NaN, null],
  ])('at %d epg is %d', (mean, share) => {
    expect(shareToLeave(mean)).toBe(share);
  });

  const animals = (
    advice: TreatAdvice['advice'],
    count: number,
    sign: 'thin' | 'eyelid-pale' = 'thin',
  ): TreatAdvice[] =>
    Array.from({ length: count }, (_, i) => ({
      animalId: `${advice}-${sign}-${i}`,
      advice,
      reasons: [{ sign, speaksFor: advice, source: 's' }],
      lookAgainAtMs: NOW,
    }));

  test('is held against today', () => {
    const today = [...animals('treat', 7), ...animals('leave', 3)];
    expect(refugiaOf(today, 150)).toMatchObject({ treat: 7, left: 3, share: 0.3, verdict: 'enough-left' });
    expect(refugiaOf(today, 100)).toMatchObject({
      verdict: 'too-few-left',
      advised: 0.5,
      couldLeave: ['treat-thin-0', 'treat-thin-1'],
    });
    expect(refugiaOf(today, null)).toMatchObject({ verdict: 'no-advice', advised: null });
    expect(refugiaOf([], 100)).toBeNull();
  });

  test('never names an animal that is ill', () => {
    expect(refugiaOf(animals('treat', 10, 'eyelid-pale'), 100)?.couldLeave).toEqual([]);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DAY_MS } from '../../../core/moment.ts';
import {
  CLASS_RULE_NAMES,
  HERD_RULE_NAMES,
  mayBe,
  type OwnThreshold,
  placesOf,
  RULE_BOUNDS,
  type RulePlace,
  rulesInForce,
  samePlace,
  thresholdAt,
} from '../../../core/worms/farm-rules.ts';
import { SHIPPED_RULES } from '../../../core/worms/treat-rules.ts';
import { adviseTreatment } from '../../../core/worms/who-to-treat.ts';

const RULES = [...CLASS_RULE_NAMES, ...HERD_RULE_NAMES];
const PLACES = RULES.flatMap((rule) => placesOf({ rule, season: null, class: null }));

function own(place: RulePlace, value: number, change: Partial<OwnThreshold> = {}): OwnThreshold {
  return { ...place, value, word: 'farm', by: 'Ida', atMs: 5, ...change };
}

describe('thresholds of a farm', () => {
  test('stand in their own place and leave all others as shipped', () => {
    fc.assert(
      fc.property(fc.constantFrom(...PLACES), fc.nat(), (place, pick) => {
        const { least, most, step } = RULE_BOUNDS[place.rule];
        const value = least + step * (pick % (Math.round((most - least) / step) + 1));
        const rules = rulesInForce([own(place, value)]);
        for (const each of PLACES) {
          const inForce = thresholdAt(rules, each);
          if (samePlace(each, place)) expect(inForce).toMatchObject({ value, evidence: 'farm' });
          else expect(inForce).toEqual(thresholdAt(SHIPPED_RULES, each));
        }
      }),
    );
  });

  test('may be the most there is, however it was added up', () => {
    expect(0.1 + 0.01 * 110).toBeGreaterThan(1.2);
    expect(mayBe('gainShare', 0.1 + 0.01 * 110)).toBe(true);
    expect(mayBe('gainShare', 1.21)).toBe(false);
  });

  test('say on whose word they were set', () => {
    const place = { rule: 'treatBody', season: 'low', class: 'young' } as const;
    const rules = rulesInForce([own(place, 2.5, { word: 'veterinarian' })]);
    expect(rules.byClass.low.young.treatBody).toEqual({
      value: 2.5,
      evidence: 'veterinarian',
      source: 'Set on the veterinarian’s word: Ida',
    });
  });

  test('as shipped are all within the bounds', () => {
    for (const place of PLACES)
      expect([place, mayBe(place.rule, thresholdAt(SHIPPED_RULES, place).value)]).toEqual([place, true]);
  });

  test.each([
    ['treatEyelid', 1],
    ['treatEyelid', 3.5],
    ['treatBody', 2.25],
    ['treatBody', 4],
    ['gainShare', 0],
    ['lookAgainDays', 0],
    ['scoresLastDays', Number.NaN],
  ] as const)('cannot be: %s of %d', (rule, value) => {
    expect(mayBe(rule, value)).toBe(false);
    const [place] = placesOf({ rule, season: null, class: null });
    if (place === undefined) throw new Error('no place');
    expect(rulesInForce([own(place, value)])).toEqual(SHIPPED_RULES);
  });

  test('count: the young are treated from an eyelid of 3 on, the others are not', () => {
    const rules = rulesInForce([own({ rule: 'treatEyelid', season: 'high', class: 'young' }, 3)]);
    const scores = { atMs: 0, by: 'Ida', eyelid: 3, body: 3, soiling: null, jaw: null, coat: null } as const;
    const advise = (kind: 'young' | 'female') =>
      adviseTreatment(
        {
          animal: { id: 'a', species: 'goat', class: kind },
          scores,
          gain: null,
          lastDoseAtMs: null,
        },
        rules,
        'high',
        DAY_MS,
      );
    expect(advise('young').advice).toBe('treat');
    expect(advise('young').reasons[0]?.source).toBe('Set by this farm: Ida');
    expect(advise('female').advice).toBe('look-again');
  });
});

import { describe, expect, test } from 'vitest';
import { loadMemory } from '../../../server/barn/memory.ts';
import { adviceNow } from '../../../server/herd/advice-now.ts';
import { wormRulesView } from '../../../server/view/worm-rules-view.ts';
import { WormRulesView } from '../../../shared/worm-rules.ts';
import { GOAT, type TestBarn, testBarn } from '../make/test-barn.ts';

const memoryOf = (test: TestBarn) => test.barn.context.memory;
const EYELID = { type: 'set-worm-rule', rule: 'treatEyelid', word: 'farm' } as const;
const eyelidRule = (test: TestBarn, season: 'high' | 'low', kind: string) =>
  wormRulesView(memoryOf(test)).rules.find(
    (rule) => rule.rule === 'treatEyelid' && rule.season === season && rule.class === kind,
  );

describe('thresholds of whom to treat', () => {
  test('are shown with their sources, every one of every class', () => {
    const view = WormRulesView.parse(wormRulesView(memoryOf(testBarn())));
    expect(view.rules).toHaveLength(5 * 4 * 2 + 2);
    for (const { value, source, shipped, setAt } of view.rules) {
      expect(source.length).toBeGreaterThan(10);
      expect([value, source, setAt]).toEqual([shipped.value, shipped.source, null]);
    }
  });

  test('change the advice at once, are marked, and are there after a restart', () => {
    const barn = testBarn();
    const scored = { eyelid: 3, body: 3, soiling: null, jaw: null, coat: null } as const;
    barn.send({ type: 'score', animalId: GOAT.id, scored });
    expect(adviceNow(barn.barn.context).byAnimal.get(GOAT.id)?.advice).toBe('look-again');
    barn.send({ ...EYELID, season: 'high', class: GOAT.class, value: 3 });
    expect(adviceNow(barn.barn.context).byAnimal.get(GOAT.id)?.advice).toBe('treat');
    expect(eyelidRule(barn, 'high', GOAT.class)).toMatchObject({
      value: 3,
      evidence: 'farm',
      shipped: { value: 4 },
    });
    expect(eyelidRule(barn, 'low', GOAT.class)).toMatchObject({ value: 4, evidence: 'published' });
    const { wormRules, settings } = memoryOf(barn);
    expect(loadMemory(barn.store, settings).wormRules).toEqual(wormRules);
  });

  test('go back to what ships, and the word before is kept', () => {
    const barn = testBarn();
    barn.send({ ...EYELID, season: null, class: null, value: 5 });
    expect(memoryOf(barn).wormRules).toHaveLength(8);
    barn.send({ ...EYELID, season: 'low', class: 'young', value: null });
    expect(eyelidRule(barn, 'low', 'young')).toMatchObject({ value: 4, setAt: null });
    expect(eyelidRule(barn, 'low', 'female')).toMatchObject({ value: 5 });
  });

  test.each([
    [
      'a value out of bounds',
      { ...EYELID, season: 'high', class: 'female', value: 1 },
      'threshold-out-of-range',
    ],
    [
      'a class for a threshold of the herd',
      {
        type: 'set-worm-rule',
        rule: 'scoresLastDays',
        word: 'farm',
        season: null,
        class: 'female',
        value: 9,
      },
      'bad-input',
    ],
  ] as const)('refuse %s', (_what, wish, code) => {
    const barn = testBarn();
    expect(barn.send(wish)).toMatchObject({ ok: false, code });
    expect(memoryOf(barn).wormRules).toEqual([]);
  });
});

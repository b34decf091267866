import { describe, expect, test } from 'vitest';
import { approves, figuresOf, whyNotApprovable } from '../../../core/medicine/approval.ts';
import { makeApproval } from '../make/approval.ts';
import { makeRule } from '../make/regimen.ts';

const onLabel = { direction: 'label', targetMgPerKg: null } as const;
const byVet = { direction: 'veterinarian', targetMgPerKg: null } as const;
const rateless = makeRule({}, 'fenbendazole-sheep');

describe('an approval', () => {
  test('of extra-label use needs a veterinarian’s direction', () => {
    expect(whyNotApprovable(makeRule(), onLabel)).toBe('needs-veterinarian');
    expect(whyNotApprovable(makeRule(), byVet)).toBeNull();
  });

  test('of label use needs no more than the label', () => {
    expect(whyNotApprovable(makeRule({}, 'levamisole-sheep'), onLabel)).toBeNull();
    expect(whyNotApprovable(makeRule({}, 'levamisole-sheep'), byVet)).toBeNull();
  });

  test('of a rule without a rate needs a veterinarian and the rate', () => {
    expect(whyNotApprovable(rateless, onLabel)).toBe('needs-veterinarian');
    expect(whyNotApprovable({ ...rateless, use: 'label' }, onLabel)).toBe('needs-veterinarian');
    expect(whyNotApprovable(rateless, byVet)).toBe('needs-rate');
    expect(whyNotApprovable(rateless, { ...byVet, targetMgPerKg: 5 })).toBeNull();
  });

  test('gives no rate of its own to a rule that has one', () => {
    expect(whyNotApprovable(makeRule(), { ...byVet, targetMgPerKg: 24 })).toBe('rate-not-needed');
  });

  test('is of one rule as it stood: another, or one whose figures changed since, is not approved by it', () => {
    const rule = makeRule();
    const approval = makeApproval({ figures: figuresOf(rule) });
    expect(approves(approval, rule)).toBe(true);
    expect(approves(approval, makeRule({}, 'levamisole-sheep'))).toBe(false);
    const rate = { value: 24, evidence: 'secondary', source: 'another edition' } as const;
    expect(approves(approval, { ...rule, target: rate })).toBe(false);
    expect(approves(approval, { ...rule, ceiling: null })).toBe(false);
    expect(approves(approval, { ...rule, route: 'into the muscle' })).toBe(false);
  });

  test('from before figures were kept stands for the rule of its name', () => {
    expect(approves(makeApproval({ figures: null }), makeRule())).toBe(true);
  });
});

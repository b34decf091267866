import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { VetTime } from '../../../core/medicine/approval.ts';
import { regimenInForce, withdrawalInForce } from '../../../core/medicine/in-force.ts';
import type { Withdrawal } from '../../../core/medicine/withdrawal.ts';
import { makeApproval } from '../make/approval.ts';
import { makeRule } from '../make/regimen.ts';

const hours = (value: number): Withdrawal => ({
  kind: 'hours',
  hours: value,
  evidence: 'secondary',
  source: 'a chart',
});
const vet = (count: number, unit: VetTime['unit'] = 'hours'): VetTime => ({ unit, count });
/** The hours a withdrawal of either kind keeps back, but for the clock. */
function hoursOf(withdrawal: Withdrawal): number {
  if (withdrawal.kind === 'hours') return withdrawal.hours;
  return withdrawal.kind === 'days' ? 24 * withdrawal.days : Number.NaN;
}

describe('the regimen in force', () => {
  test('has the shipped rate, and a guard of ours for a ceiling no source gives', () => {
    const regimen = regimenInForce(makeRule({}, 'fenbendazole-goat'), null);
    expect(regimen?.target).toMatchObject({ value: 5, evidence: 'primary' });
    expect(regimen?.ceiling).toMatchObject({ value: 7.5, evidence: 'own-guard' });
  });

  test('has no rate until a veterinarian gives one, and then says that it is the veterinarian’s', () => {
    const rule = makeRule({}, 'fenbendazole-sheep');
    expect(regimenInForce(rule, null)).toBeNull();
    const regimen = regimenInForce(rule, makeApproval({ regimenId: rule.id, targetMgPerKg: 4 }));
    expect(regimen?.target).toMatchObject({ value: 4, evidence: 'directed' });
    expect(regimen?.ceiling).toMatchObject({ value: 6, evidence: 'own-guard' });
  });

  test('never takes another rate for a known one', () => {
    const regimen = regimenInForce(makeRule(), makeApproval({ targetMgPerKg: 24 }));
    expect(regimen?.target.value).toBe(12);
  });
});

describe('the withdrawal in force', () => {
  test('without a time from the veterinarian is what ships', () => {
    for (const shipped of [hours(96), { kind: 'unknown', source: 'none read' } as const]) {
      expect(withdrawalInForce(shipped, null)).toBe(shipped);
    }
  });

  test('is never shorter than a sourced one, whatever the veterinarian gave and in which unit', () => {
    const unit = fc.constantFrom('hours', 'days') as fc.Arbitrary<VetTime['unit']>;
    fc.assert(
      fc.property(fc.nat(24 * 365), fc.nat(365), unit, (shipped, count, of) => {
        const given = count * (of === 'days' ? 24 : 1);
        expect(hoursOf(withdrawalInForce(hours(shipped), vet(count, of)))).toBe(Math.max(shipped, given));
        const byDay: Withdrawal = {
          kind: 'days',
          days: 1 + (shipped % 300),
          evidence: 'primary',
          source: 'label',
        };
        expect(hoursOf(withdrawalInForce(byDay, vet(count, of)))).toBe(Math.max(hoursOf(byDay), given));
      }),
    );
  });

  test('is the veterinarian’s where none was known', () => {
    const unknown = { kind: 'unknown', source: 'none read' } as const;
    expect(withdrawalInForce(unknown, vet(72))).toMatchObject({ kind: 'hours', hours: 72 });
    expect(withdrawalInForce(unknown, vet(3, 'days'))).toMatchObject({ kind: 'days', days: 3 });
  });

  test.each([0, 1, 72, 24 * 365])(
    'stays "not for people" where a source says so, though %d hours were given',
    (count) => {
      const never = { kind: 'not-for-people', source: '21 CFR 556.350: no milk tolerance is set' } as const;
      expect(withdrawalInForce(never, vet(count)).kind).toBe('not-for-people');
    },
  );
});

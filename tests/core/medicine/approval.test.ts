import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { whyNotApprovable, withdrawalInForce } from '../../../core/medicine/approval.ts';
import { makeRegimen } from '../make/regimen.ts';

const sourced = { kind: 'hours', hours: 96, evidence: 'secondary', source: 'a chart' } as const;

describe('an approval', () => {
  test('of extra-label use needs a veterinarian’s direction', () => {
    expect(whyNotApprovable(makeRegimen(), 'label')).toBe('needs-veterinarian');
    expect(whyNotApprovable(makeRegimen(), 'veterinarian')).toBeNull();
  });

  test('of label use needs no more than the label', () => {
    expect(whyNotApprovable(makeRegimen({}, 'levamisole-sheep'), 'label')).toBeNull();
    expect(whyNotApprovable(makeRegimen({}, 'levamisole-sheep'), 'veterinarian')).toBeNull();
  });
});

describe('the withdrawal in force', () => {
  test('without hours from the veterinarian is what ships', () => {
    for (const shipped of [sourced, { kind: 'unknown', source: 'none read' } as const]) {
      expect(withdrawalInForce(shipped, null)).toBe(shipped);
    }
  });

  test('is never shorter than a sourced one, whatever hours the veterinarian gave', () => {
    fc.assert(
      fc.property(fc.nat(24 * 365), fc.nat(24 * 365), (shipped, vet) => {
        const inForce = withdrawalInForce({ ...sourced, hours: shipped }, vet);
        expect(inForce).toMatchObject({ kind: 'hours', hours: Math.max(shipped, vet) });
      }),
    );
  });

  test('is the veterinarian’s where none was known', () => {
    expect(withdrawalInForce({ kind: 'unknown', source: 'none read' }, 72)).toMatchObject({ hours: 72 });
  });

  test.each([0, 1, 72, 24 * 365])(
    'stays "not for people" where a source says so, though %d hours were given',
    (hours) => {
      const never = { kind: 'not-for-people', source: '21 CFR 556.350: no milk tolerance is set' } as const;
      expect(withdrawalInForce(never, hours).kind).toBe('not-for-people');
    },
  );
});

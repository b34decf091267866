import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type GroupMeans,
  type GroupMember,
  groupDose,
  splitGroups,
} from '../../../core/dosing/group-dose.ts';
import { SYRINGE_CATALOGUE } from '../../../core/dosing/syringe.ts';
import { grams } from '../../../core/quantity/mass.ts';
import { makeHeld } from '../make/held.ts';
import { makeJug } from '../make/jug.ts';
import { makeRegimen } from '../make/regimen.ts';

const MEANS: GroupMeans = { regimen: makeRegimen(), jug: makeJug(), syringes: SYRINGE_CATALOGUE };

function member(id: string, kg: number, doubt = 0.02): GroupMember {
  return { id, weight: makeHeld(kg, { uncertainty: grams(1000 * kg * doubt) }) };
}

const herd = fc
  .array(
    fc.tuple(fc.double({ min: 3, max: 130, noNaN: true }), fc.double({ min: 0, max: 0.1, noNaN: true })),
    {
      minLength: 1,
      maxLength: 20,
    },
  )
  .map((weights) => weights.map(([kg, doubt], i) => member(`${i}`, kg, doubt)));

describe('the dose of a group', () => {
  test('is the dose of its heaviest, never of the mean', () => {
    const found = groupDose([member('a', 34), member('b', 40), member('c', 37)], MEANS);
    expect(found).toMatchObject({ kind: 'dose', heaviest: { id: 'b' }, lightest: { id: 'a' } });
    if (found.kind !== 'dose') return;
    expect(found.dose.plan.total.value).toBe(9.8);
    // 9.8 mL of 49.453 mg/mL in 34 kg.
    expect(found.lightestGets.value).toBeCloseTo(14.254, 3);
  });

  test('is refused where the lightest would pass the ceiling, and says who', () => {
    expect(groupDose([member('kid', 15), member('doe', 40), member('young', 24)], MEANS)).toMatchObject({
      kind: 'past-ceiling',
      heaviest: { id: 'doe' },
      past: [{ id: 'kid' }, { id: 'young' }],
    });
  });

  test('is refused for a lightest whose weight is so doubtful that it may', () => {
    expect(groupDose([member('a', 30, 0.01), member('b', 40)], MEANS).kind).toBe('dose');
    expect(groupDose([member('a', 30, 0.08), member('b', 40)], MEANS)).toMatchObject({
      kind: 'past-ceiling',
      past: [{ id: 'a' }],
    });
  });

  test('of nobody, or without a syringe, is none', () => {
    expect(groupDose([], MEANS)).toEqual({ kind: 'nobody' });
    expect(groupDose([member('a', 40)], { ...MEANS, syringes: [] })).toMatchObject({ kind: 'no-syringe' });
  });

  test('never gives the heaviest less than its own dose, nor anybody more than the ceiling', () => {
    let doses = 0;
    fc.assert(
      fc.property(herd, (members) => {
        const found = groupDose(members, MEANS);
        if (found.kind !== 'dose') return;
        doses += 1;
        const heaviest = Math.max(...members.map(({ weight }) => weight.mass.value));
        expect(found.heaviest.weight.mass.value).toBe(heaviest);
        expect(found.lightestGets.value).toBeGreaterThanOrEqual(found.dose.delivered.value - 1e-9);
        for (const { weight } of members) {
          const rate = (found.dose.plan.total.value * MEANS.jug.strength.value) / (weight.mass.value / 1000);
          expect(rate).toBeLessThanOrEqual(MEANS.regimen.ceiling.value);
        }
      }),
    );
    expect(doses).toBeGreaterThan(5);
  });
});

describe('a herd split into groups', () => {
  test('has everybody in one group or left over, once, and each group is one that would be dosed', () => {
    fc.assert(
      fc.property(herd, (members) => {
        const { groups, left } = splitGroups(members, MEANS);
        const ids = [...groups.flatMap((group) => group.members), ...left].map(({ id }) => id).sort();
        expect(ids).toEqual(members.map(({ id }) => id).sort());
        for (const group of groups) expect(groupDose(group.members, MEANS)).toEqual(group.dose);
        for (const one of left) expect(groupDose([one], MEANS).kind).not.toBe('dose');
      }),
    );
  });

  test('of three sizes makes three groups, heaviest first', () => {
    const { groups } = splitGroups(
      [5, 5.5, 38, 40, 42, 80, 88].map((kg) => member(`${kg}`, kg)),
      MEANS,
    );
    expect(groups.map((group) => group.members.map(({ id }) => id))).toEqual([
      ['88', '80'],
      ['42', '40', '38'],
      ['5.5', '5'],
    ]);
  });
});

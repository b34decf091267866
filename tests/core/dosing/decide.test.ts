import { describe, expect, test } from 'vitest';
import { decideDose } from '../../../core/dosing/decide.ts';
import { makeAnimal } from '../make/animal.ts';
import { makeApproval } from '../make/approval.ts';
import { NO_DOUBTS } from '../make/caution-input.ts';
import { makeEarlier } from '../make/earlier.ts';
import { makeHeld } from '../make/held.ts';
import { makeJug } from '../make/jug.ts';
import { makeWorld } from '../make/world.ts';

const anna = makeAnimal();

describe('a decision', () => {
  test('takes the regimen of the animal’s own species', () => {
    const goat = decideDose(anna, makeHeld(), makeJug(), NO_DOUBTS, makeWorld());
    const sheep = decideDose({ ...anna, species: 'sheep' }, makeHeld(), makeJug(), NO_DOUBTS, makeWorld());
    expect([goat.regimen?.id, sheep.regimen?.id]).toEqual(['levamisole-goat', 'levamisole-sheep']);
    expect(goat.dose?.exact.value).toBeCloseTo(9.7062, 3);
    expect(sheep.dose?.exact.value).toBeCloseTo(6.4708, 3);
  });

  test('for a species without a rule has no dose and says why', () => {
    const { regimen, dose, cautions } = decideDose(
      { ...anna, species: 'cattle' },
      makeHeld(300),
      makeJug({ medicineId: 'ivermectin', packetId: 'ivermectin-0.8' }),
      NO_DOUBTS,
      makeWorld(),
    );
    expect([regimen, dose]).toEqual([null, null]);
    expect(cautions.map(({ code }) => code)).toContain('species-not-covered');
  });

  test('for another presentation than the rule is for has no dose and says why', () => {
    const weak = makeJug({ medicineId: 'albendazole', packetId: 'albendazole-45.5' });
    const cow = { ...anna, species: 'cattle' as const };
    const { dose, cautions } = decideDose(cow, makeHeld(300), weak, NO_DOUBTS, makeWorld());
    expect(dose).toBeNull();
    expect(cautions.map(({ code }) => code)).toContain('presentation-not-covered');
  });

  test('of a rule nobody knows the rate of is none, until a veterinarian’s rate is approved', () => {
    const bottle = makeJug({ medicineId: 'fenbendazole', packetId: 'fenbendazole-100' });
    const ewe = { ...anna, species: 'sheep' as const };
    const before = decideDose(ewe, makeHeld(), bottle, NO_DOUBTS, makeWorld());
    expect(before.dose).toBeNull();
    expect(before.cautions.map(({ code }) => code)).toContain('not-approved');
    const approvals = [makeApproval({ regimenId: 'fenbendazole-sheep', targetMgPerKg: 12 })];
    const after = decideDose(ewe, makeHeld(), bottle, NO_DOUBTS, makeWorld({ approvals }));
    expect(after.regimen?.target).toMatchObject({ value: 12, evidence: 'directed' });
    expect(after.dose).not.toBeNull();
  });

  test('follows the approved one of two rules for the species', () => {
    const bottle = makeJug({ medicineId: 'fenbendazole', packetId: 'fenbendazole-100' });
    const of = (regimenId: string) =>
      decideDose(
        anna,
        makeHeld(),
        bottle,
        NO_DOUBTS,
        makeWorld({ approvals: [makeApproval({ regimenId })] }),
      );
    expect(of('fenbendazole-goat').regimen?.target.value).toBe(5);
    expect(of('fenbendazole-goat-double').regimen?.target.value).toBe(10);
  });

  test('for a medicine nobody knows has no dose', () => {
    const unknown = makeJug({ medicineId: 'no-such' });
    expect(decideDose(anna, makeHeld(), unknown, NO_DOUBTS, makeWorld()).dose).toBeNull();
  });

  test('looks only at the animal’s own earlier doses', () => {
    const earlier = [makeEarlier(1, { animalId: 'bella' })];
    const { cautions } = decideDose(anna, makeHeld(), makeJug(), NO_DOUBTS, makeWorld({ earlier }));
    expect(cautions.map(({ code }) => code)).toEqual(['extra-label']);
  });

  test('takes the approval of its own regimen among several', () => {
    const approvals = [makeApproval({ regimenId: 'levamisole-sheep', by: 'Lee' }), makeApproval()];
    expect(decideDose(anna, makeHeld(), makeJug(), NO_DOUBTS, makeWorld({ approvals })).approval?.by).toBe(
      'Kim',
    );
  });

  test('works out a dose even unapproved, so that it can be looked at, but stops it', () => {
    const { dose, cautions } = decideDose(
      anna,
      makeHeld(),
      makeJug(),
      NO_DOUBTS,
      makeWorld({ approvals: [] }),
    );
    expect(dose).not.toBeNull();
    expect(cautions[0]).toMatchObject({ code: 'not-approved', strength: 'stop' });
  });
});

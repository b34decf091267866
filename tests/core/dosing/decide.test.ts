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
      makeJug(),
      NO_DOUBTS,
      makeWorld(),
    );
    expect([regimen, dose]).toEqual([null, null]);
    expect(cautions.map(({ code }) => code)).toContain('species-not-covered');
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

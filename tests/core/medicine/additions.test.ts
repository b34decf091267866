import { describe, expect, test } from 'vitest';
import { LEVAMISOLE } from '../../../core/formulary/levamisole.ts';
import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { withAdditions } from '../../../core/medicine/additions.ts';
import { liquidById, medicineById, regimenById } from '../../../core/medicine/formulary.ts';
import { makeRule } from '../make/regimen.ts';

const entered = (value: number) => ({ value, evidence: 'entered', source: 'The label in hand, Kim' });
const BOTTLE = {
  form: 'liquid',
  id: 'own-thiamine-200',
  strength: entered(200),
  strengthUncertainty: entered(0.03),
  bottlesMl: [100],
  openLifeDays: entered(28),
};
const RULE = { ...makeRule({}, 'thiamine-goat'), id: 'own-thiamine-goat', target: entered(10) };
const THIAMINE = { addTo: 'thiamine', presentations: [BOTTLE], regimens: [RULE] };

describe('what a farm adds', () => {
  test('stands beside what ships, found like it', () => {
    const { formulary, leftOut } = withAdditions(SHIPPED, [THIAMINE]);
    expect(leftOut).toEqual([]);
    expect(liquidById(formulary, 'own-thiamine-200')?.medicine.id).toBe('thiamine');
    expect(regimenById(formulary, 'own-thiamine-goat')?.regimen.target).toMatchObject({ value: 10 });
    expect(formulary.length).toBe(SHIPPED.length);
  });

  test('may be a whole medicine', () => {
    const own = {
      ...LEVAMISOLE,
      id: 'own',
      presentations: [],
      regimens: [{ ...makeRule(), id: 'own-goat', presentationIds: null }],
    };
    const { formulary, leftOut } = withAdditions(SHIPPED, [own]);
    expect(leftOut).toEqual([]);
    expect(medicineById(formulary, 'own')?.regimens).toHaveLength(1);
  });

  test.each([
    ['no entry at all', 7, ''],
    ['nothing of an entry', {}, 'id'],
    ['a part of a medicine there is not', { ...THIAMINE, addTo: 'no-such' }, 'addTo'],
    ['an id that ships', { ...THIAMINE, regimens: [{ ...RULE, id: 'thiamine-goat' }] }, 'id'],
    ['an id twice', { ...THIAMINE, regimens: [RULE, RULE] }, 'id'],
    [
      'percent for mg/mL',
      { ...THIAMINE, presentations: [{ ...BOTTLE, strength: { ...entered(20), percent: 20 } }] },
      'presentations.0.strength',
    ],
    [
      'a figure without a source',
      { ...THIAMINE, regimens: [{ ...RULE, target: { value: 1 } }] },
      'regimens.0.target.evidence',
    ],
  ])('is left out where it is %s, and everything else stays', (_what, bad, field) => {
    const { formulary, leftOut } = withAdditions(SHIPPED, [bad, THIAMINE]);
    expect(leftOut).toMatchObject([{ entry: 1, field }]);
    expect(leftOut[0]?.detail.length).toBeGreaterThan(5);
    expect(regimenById(formulary, 'own-thiamine-goat')).toBeDefined();
    for (const medicine of SHIPPED.filter(({ id }) => id !== 'thiamine'))
      expect(formulary).toContain(medicine);
  });

  test('never changes a rule that ships', () => {
    const { formulary } = withAdditions(SHIPPED, [THIAMINE]);
    for (const medicine of SHIPPED) {
      for (const rule of medicine.regimens) expect(regimenById(formulary, rule.id)?.regimen).toEqual(rule);
    }
  });

  test('is used no more once a later entry retires it, and is found still', () => {
    const gone = { retire: 'own-thiamine-200', by: 'Kim', on: '2027-04-12' };
    const { formulary, own, retired, leftOut } = withAdditions(SHIPPED, [THIAMINE, gone]);
    expect(leftOut).toEqual([]);
    expect([...own]).toEqual(['own-thiamine-200', 'own-thiamine-goat']);
    expect([...retired]).toEqual(['own-thiamine-200']);
    expect(liquidById(formulary, 'own-thiamine-200')).toBeDefined();
  });

  test.each([
    ['what ships', 'levamisole-goat'],
    ['what nobody entered', 'no-such'],
    ['what only comes after it', 'own-thiamine-200'],
  ])('never retires %s', (_what, retire) => {
    const { retired, leftOut } = withAdditions(SHIPPED, [{ retire, by: 'Kim', on: null }, THIAMINE]);
    expect(retired.size).toBe(0);
    expect(leftOut).toMatchObject([{ entry: 1, field: 'retire' }]);
  });
});

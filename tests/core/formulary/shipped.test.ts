import { describe, expect, test } from 'vitest';
import { ALBENDAZOLE } from '../../../core/formulary/albendazole.ts';
import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { isKnown } from '../../../core/medicine/figure.ts';
import { medicineById, regimenById } from '../../../core/medicine/formulary.ts';
import { regimenInForce } from '../../../core/medicine/in-force.ts';
import type { Medicine } from '../../../core/medicine/medicine.ts';
import { CONCENTRATE, KID_TOXICITY_MG_PER_KG, MIXES, PACKET_MG } from '../../oracles/levamisole-table.ts';
import { makePacket, makeRegimen, makeRule } from '../make/regimen.ts';

/** Everything a medicine ships that names a source. */
function sourced(medicine: Medicine): { where: string; source: string; evidence: string; value: unknown }[] {
  const found: { where: string; source: string; evidence: string; value: unknown }[] = [];
  const walk = (where: string, part: unknown): void => {
    if (typeof part !== 'object' || part === null) return;
    if ('value' in part || 'kind' in part || 'text' in part || 'evidence' in part) {
      const { source = '', evidence = '', value } = part as Record<string, string | undefined>;
      found.push({ where, source, evidence, value });
    }
    for (const [key, inner] of Object.entries(part)) walk(`${where}.${key}`, inner);
  };
  walk(medicine.id, medicine);
  return found;
}

describe.each(SHIPPED.map((medicine) => ({ id: medicine.id, medicine })))('$id', ({ medicine }) => {
  test('ships nothing without a source', () => {
    const figures = sourced(medicine);
    expect(figures.length).toBeGreaterThan(8);
    expect(figures.filter(({ source }) => source.length < 8)).toEqual([]);
  });

  test('ships no figure from memory, from a person or from a veterinarian', () => {
    for (const { source, evidence } of sourced(medicine)) {
      expect(source).not.toMatch(/memory|recalled/i);
      expect(['entered', 'directed']).not.toContain(evidence);
    }
  });

  test('names an edition, a date or that there is none, for whatever was read', () => {
    const read = sourced(medicine).filter(({ evidence }) => ['primary', 'secondary'].includes(evidence));
    const dateless = read.filter(({ source }) => !/\b(19|20)\d\d\b|undated/.test(source));
    expect(dateless.filter(({ source }) => !/10\.\d{4}\//.test(source))).toEqual([]);
  });

  test('ships no figure with evidence "unknown" that has a value', () => {
    const unknown = sourced(medicine).filter(({ evidence }) => evidence === 'unknown');
    for (const { value } of unknown) expect(value).toBeUndefined();
  });

  test('keeps every target below its ceiling, and the ceiling within one and a half times it', () => {
    for (const rule of medicine.regimens) {
      const regimen = regimenInForce(rule, null);
      if (regimen === null) {
        expect(isKnown(rule.target)).toBe(false);
        continue;
      }
      expect(regimen.ceiling.value).toBeGreaterThan(regimen.target.value);
      expect(regimen.ceiling.value).toBeLessThanOrEqual(1.5 * regimen.target.value);
    }
  });

  test('names only extras that ship', () => {
    for (const { medicineId } of medicine.extras) expect(medicineById(SHIPPED, medicineId)).toBeDefined();
  });
});

test('no two rules or presentations of the formulary share an id', () => {
  const ids = SHIPPED.flatMap(({ presentations, regimens }) =>
    [...presentations, ...regimens].map(({ id }) => id),
  );
  expect(new Set(ids).size).toBe(ids.length);
});

test('what rests on memory ships without it', () => {
  const meat = (id: string) => regimenById(SHIPPED, id)?.regimen.meat.kind;
  const milk = (id: string) => regimenById(SHIPPED, id)?.regimen.milk.kind;
  expect(meat('levamisole-cattle')).toBe('unknown');
  expect(meat('albendazole-goat-fluke')).toBe('unknown');
  expect(meat('moxidectin-goat')).toBe('unknown');
  expect(
    ['levamisole-goat', 'albendazole-goat', 'fenbendazole-goat-double', 'ivermectin-goat'].map(milk),
  ).toEqual(['unknown', 'unknown', 'unknown', 'unknown']);
  expect(isKnown(makeRule({}, 'fenbendazole-sheep').target)).toBe(false);
});

describe('levamisole', () => {
  const packet = makePacket();
  test('is 46.8 g of active in a packet made up to a US quart', () => {
    expect(packet.activeGrams.value * 1000).toBe(PACKET_MG);
    expect(packet.madeUpToMl.value).toBe(MIXES.quart.ml);
  });

  test.each(['sheep', 'cattle'] as const)(
    'is 8 mg/kg for %s by the label’s volume for a weight',
    (species) => {
      const [lb, ml] = CONCENTRATE[species][0];
      const rate = (ml * CONCENTRATE.mgPerMl) / (lb * 0.45359237);
      expect(rate).toBeCloseTo(makeRegimen({}, `levamisole-${species}`).target.value, 1);
    },
  );

  test('for goats is extra-label, and its ceiling lies below the first sign seen in kids', () => {
    const goat = makeRegimen();
    expect(goat.use).toBe('extra-label');
    expect(goat.ceiling.value).toBeLessThan(KID_TOXICITY_MG_PER_KG.firstSign);
    expect(goat.target.value).toBeCloseTo(KID_TOXICITY_MG_PER_KG.noSign, 0);
  });

  test('gives no milk to people from sheep or cattle', () => {
    expect(makeRegimen({}, 'levamisole-sheep').milk.kind).toBe('not-for-people');
    expect(makeRegimen({}, 'levamisole-cattle').milk.kind).toBe('not-for-people');
  });
});

test('albendazole takes the longest ban in print for the newly bred, in every species', () => {
  expect(ALBENDAZOLE.regimens.length).toBeGreaterThan(3);
  for (const { limits } of ALBENDAZOLE.regimens) {
    expect(limits.pregnancy?.afterBredDays.value).toBeGreaterThanOrEqual(45);
    expect(limits.pregnancy?.afterMalesDays.value).toBeGreaterThanOrEqual(45);
  }
});

import { describe, expect, test } from 'vitest';
import {
  Figure,
  Medicine,
  Packet,
  Regimen,
  regimenFor,
  Withdrawal,
} from '../../../core/medicine/formulary.ts';
import { LEVAMISOLE } from '../../../core/medicine/levamisole.ts';
import { MEDICINES, medicineById, packetById, regimenById } from '../../../core/medicine/medicines.ts';
import { CONCENTRATE, KID_TOXICITY_MG_PER_KG, MIXES, PACKET_MG } from '../../oracles/levamisole-table.ts';
import { makePacket, makeRegimen } from '../make/regimen.ts';

const packet = makePacket();

describe('the formulary refuses', () => {
  test('a packet whose gross and active mass are swapped', () => {
    const swapped = { ...packet, grossGrams: packet.activeGrams, activeGrams: packet.grossGrams };
    expect(Packet.safeParse(swapped).success).toBe(false);
    expect(Packet.safeParse(packet).success).toBe(true);
  });

  test('a packet whose active is as heavy as all its powder', () => {
    expect(Packet.safeParse({ ...packet, activeGrams: packet.grossGrams }).success).toBe(false);
  });

  test.each([0, -12, Number.NaN, Number.POSITIVE_INFINITY, '12'])('a figure of %s', (value) => {
    expect(Figure.safeParse({ value, evidence: 'primary', source: 'a law text' }).success).toBe(false);
  });

  test('a figure without a source, or one recalled from memory', () => {
    expect(Figure.safeParse({ value: 12, evidence: 'primary', source: '' }).success).toBe(false);
    expect(Figure.safeParse({ value: 12, evidence: 'memory', source: 'recalled by someone' }).success).toBe(
      false,
    );
  });

  test('a key it does not know, at every level', () => {
    expect(Medicine.safeParse({ ...LEVAMISOLE, maker: 'someone' }).success).toBe(false);
    expect(Regimen.safeParse({ ...makeRegimen(), doseMlPerLb: 1 }).success).toBe(false);
    expect(Packet.safeParse({ ...packet, brand: 'x' }).success).toBe(false);
  });

  test('negative hours', () => {
    const hours = { kind: 'hours', hours: -1, evidence: 'primary', source: 'a law text' };
    expect(Withdrawal.safeParse(hours).success).toBe(false);
  });
});

/** Every figure and withdrawal a medicine ships with. */
function sourced(medicine: Medicine): { where: string; source: string; evidence: string }[] {
  const found: { where: string; source: string; evidence: string }[] = [];
  const walk = (where: string, value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    const entries = Object.entries(value);
    const numeric = 'value' in value || 'hours' in value || 'kind' in value;
    if (numeric) {
      const { source, evidence } = value as { source?: string; evidence?: string };
      found.push({ where, source: source ?? '', evidence: evidence ?? '' });
    }
    for (const [key, part] of entries) walk(`${where}.${key}`, part);
  };
  walk(medicine.id, medicine);
  return found;
}

describe.each(MEDICINES)('$id', (medicine) => {
  test('ships no figure without a source', () => {
    const figures = sourced(medicine);
    expect(figures.length).toBeGreaterThan(10);
    for (const { where, source } of figures)
      expect([where, source.length]).toEqual([where, expect.any(Number)]);
    expect(figures.filter(({ source }) => source.length < 8)).toEqual([]);
  });

  test('ships no figure from memory', () => {
    for (const { source } of sourced(medicine)) expect(source).not.toMatch(/memory|recalled/i);
  });

  test('has every target below its ceiling, and a ceiling of no more than one and a half times it', () => {
    for (const { target, ceiling } of medicine.regimens) {
      expect(ceiling.value).toBeGreaterThan(target.value);
      expect(ceiling.value).toBeLessThanOrEqual(1.5 * target.value);
    }
  });

  test('has one rule for each species, found by species and by id', () => {
    const species = medicine.regimens.map((regimen) => regimen.species);
    expect(new Set(species).size).toBe(species.length);
    for (const regimen of medicine.regimens) {
      expect(regimenFor(medicine, regimen.species)).toBe(regimen);
      expect(regimenById(regimen.id)).toEqual({ medicine, regimen });
    }
    expect(medicineById(medicine.id)).toBe(medicine);
  });
});

describe('levamisole', () => {
  test('is 46.8 g of active in a packet made up to a US quart', () => {
    expect(packet.activeGrams.value * 1000).toBe(PACKET_MG);
    expect(packet.madeUpToMl.value).toBe(MIXES.quart.ml);
    expect(packetById('levamisole-52g')?.medicine.id).toBe('levamisole');
  });

  test('is 8 mg/kg for sheep by the label, as 1 mL of 181.5 mg/mL for 50 lb says', () => {
    const [lb, ml] = CONCENTRATE.sheep[0];
    const rate = (ml * CONCENTRATE.mgPerMl) / (lb * 0.45359237);
    expect(rate).toBeCloseTo(makeRegimen({}, 'levamisole-sheep').target.value, 1);
  });

  test('for goats is extra-label, and its ceiling lies below the first sign seen in kids', () => {
    const goat = makeRegimen();
    expect(goat.use).toBe('extra-label');
    expect(goat.ceiling.value).toBeLessThan(KID_TOXICITY_MG_PER_KG.firstSign);
    expect(goat.target.value).toBeCloseTo(KID_TOXICITY_MG_PER_KG.noSign, 0);
  });

  test('has no goat milk time, and no milk at all for people from sheep', () => {
    expect(makeRegimen().milk.kind).toBe('unknown');
    expect(makeRegimen({}, 'levamisole-sheep').milk.kind).toBe('not-for-people');
  });

  test('knows nothing of ids it does not have', () => {
    expect(medicineById('x')).toBeUndefined();
    expect(packetById('x')).toBeUndefined();
    expect(regimenById('x')).toBeUndefined();
    expect(regimenFor(LEVAMISOLE, 'cattle')).toBeUndefined();
  });
});

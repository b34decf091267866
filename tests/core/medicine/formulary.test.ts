import { describe, expect, test } from 'vitest';
import { LEVAMISOLE } from '../../../core/formulary/levamisole.ts';
import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { Figure, Line } from '../../../core/medicine/figure.ts';
import {
  liquidById,
  liquidsOf,
  medicineById,
  packetById,
  packetsOf,
  presentationById,
  regimenById,
  regimensFor,
  sameActive,
} from '../../../core/medicine/formulary.ts';
import { Medicine } from '../../../core/medicine/medicine.ts';
import { Packet } from '../../../core/medicine/presentation.ts';
import { Regimen } from '../../../core/medicine/regimen.ts';
import { Withdrawal } from '../../../core/medicine/withdrawal.ts';
import { makePacket, makeRule } from '../make/regimen.ts';

describe('the formulary refuses', () => {
  test.each([0, -12, Number.NaN, Number.POSITIVE_INFINITY, '12'])('a figure of %s', (value) => {
    expect(Figure.safeParse({ value, evidence: 'primary', source: 'a law text' }).success).toBe(false);
  });

  test('a figure without a source, or one recalled from memory', () => {
    expect(Figure.safeParse({ value: 12, evidence: 'primary', source: '' }).success).toBe(false);
    expect(Figure.safeParse({ value: 12, evidence: 'memory', source: 'recalled by someone' }).success).toBe(
      false,
    );
    expect(Line.safeParse({ text: 'Shake it', evidence: 'primary', source: '' }).success).toBe(false);
  });

  test('a value for a figure that is said to be unknown', () => {
    const target = { value: 10, evidence: 'unknown', source: 'recalled, not read' };
    expect(Regimen.safeParse({ ...makeRule(), target }).success).toBe(false);
  });

  test('a key it does not know, at every level', () => {
    expect(Medicine.safeParse({ ...LEVAMISOLE, maker: 'someone' }).success).toBe(false);
    expect(Regimen.safeParse({ ...makeRule(), doseMlPerLb: 1 }).success).toBe(false);
    expect(Packet.safeParse({ ...makePacket(), brand: 'x' }).success).toBe(false);
  });

  test('negative hours, and a part of a day', () => {
    const hours = { kind: 'hours', hours: -1, evidence: 'primary', source: 'a law text' };
    expect(Withdrawal.safeParse(hours).success).toBe(false);
    const days = { kind: 'days', days: 1.5, evidence: 'primary', source: 'a law text' };
    expect(Withdrawal.safeParse(days).success).toBe(false);
  });

  test('a ceiling below the target and a floor above it', () => {
    const figure = (value: number) => ({ value, evidence: 'secondary', source: 'a chart of 2006' });
    expect(Regimen.safeParse({ ...makeRule(), ceiling: figure(12) }).success).toBe(false);
    expect(Regimen.safeParse({ ...makeRule(), floor: figure(12) }).success).toBe(false);
    expect(Regimen.safeParse({ ...makeRule(), floor: figure(11) }).success).toBe(true);
  });

  test('two rules of one id, and a rule for a presentation there is not', () => {
    const [rule] = LEVAMISOLE.regimens;
    expect(Medicine.safeParse({ ...LEVAMISOLE, regimens: [rule, rule] }).success).toBe(false);
    const elsewhere = { ...rule, presentationIds: ['levamisole-99g'] };
    expect(Medicine.safeParse({ ...LEVAMISOLE, regimens: [elsewhere] }).success).toBe(false);
  });
});

describe('the formulary finds', () => {
  test('what it has, by id', () => {
    for (const medicine of SHIPPED) {
      expect(medicineById(SHIPPED, medicine.id)).toBe(medicine);
      for (const regimen of medicine.regimens) {
        expect(regimenById(SHIPPED, regimen.id)).toEqual({ medicine, regimen });
        expect(regimensFor(medicine, regimen.species)).toContain(regimen);
      }
      for (const presentation of medicine.presentations)
        expect(presentationById(SHIPPED, presentation.id)).toEqual({ medicine, presentation });
      expect(packetsOf(medicine).length + liquidsOf(medicine).length).toBe(medicine.presentations.length);
    }
    expect(packetById(SHIPPED, 'levamisole-52g')?.packet.activeGrams.value).toBe(46.8);
    expect(liquidById(SHIPPED, 'albendazole-113.6')?.liquid.strength.value).toBe(113.6);
  });

  test('nothing of ids it does not have, nor a packet that is a bottle', () => {
    expect(medicineById(SHIPPED, 'x')).toBeUndefined();
    expect(packetById(SHIPPED, 'x')).toBeUndefined();
    expect(packetById(SHIPPED, 'albendazole-113.6')).toBeUndefined();
    expect(liquidById(SHIPPED, 'levamisole-52g')).toBeUndefined();
    expect(regimenById(SHIPPED, 'x')).toBeUndefined();
    expect(regimensFor(LEVAMISOLE, 'goat').map(({ id }) => id)).toEqual(['levamisole-goat']);
  });

  test('the same active under another name', () => {
    const own = { ...LEVAMISOLE, id: 'own-levamisole' };
    const formulary = [...SHIPPED, own];
    expect(sameActive(formulary, 'own-levamisole', 'levamisole')).toBe(true);
    expect(sameActive(formulary, 'albendazole', 'levamisole')).toBe(false);
    expect(sameActive(formulary, 'gone', 'gone')).toBe(true);
    expect(sameActive(formulary, 'gone', 'lost')).toBe(false);
  });
});

import { describe, expect, test } from 'vitest';
import { registerLine } from '../../../core/exports/register-line.ts';
import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { swallowed, type Treatment } from '../../../core/round/treatment.ts';
import { makeTreatment } from '../make/book.ts';

const WHOLE = makeTreatment();
const { total, syringe } = WHOLE.offer.dose.plan;

describe('what was swallowed', () => {
  test.each([
    ['a whole dose', { outcome: 'whole', left: null }, total.value],
    ['a part, by what stayed in the syringe', { outcome: 'part', left: millilitres(1.1) }, total.value - 1.1],
    ['a part of which more stayed than was drawn', { outcome: 'part', left: millilitres(99) }, 0],
    ['a part nobody measured', { outcome: 'part', left: null }, null],
    ['spat out', { outcome: 'spat-out', left: null }, null],
  ] as const)('of %s', (_, change, ml) => {
    const treatment: Treatment = { ...WHOLE, ...change };
    const taken = swallowed(treatment)?.value ?? null;
    if (ml === null || taken === null) expect(taken).toBe(ml);
    else expect(Math.abs(taken - ml)).toBeLessThanOrEqual(syringe.graduation.value / 2 + 1e-9);

    const world = { formulary: SHIPPED, animals: new Map(), timeZone: 'UTC' };
    const { dose } = registerLine({ treatment, corrections: [] }, world);
    expect(dose.givenMl).toBe(taken ?? total.value);
    expect(dose.outcome).toBe(change.outcome);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Syringe } from '../../../core/dosing/syringe.ts';
import { LEVAMISOLE } from '../../../core/formulary/levamisole.ts';
import type { Animal } from '../../../core/herd/animal.ts';
import type { DilutionScore } from '../../../core/mixing/dilution-score.ts';
import { ONE_PACKET, type PowderAmount } from '../../../core/mixing/plan.ts';
import { reasonBetween, scoreDilutions } from '../../../core/mixing/recommend.ts';
import { kilograms } from '../../../core/quantity/mass.ts';
import { CHECK_VALUES_12 } from '../../oracles/herd-volumes.ts';
import { makeAnimal } from '../make/animal.ts';
import { makePacket } from '../make/regimen.ts';
import { makeSyringe } from '../make/syringe.ts';
import { hoursAgo } from '../make/time.ts';

const ONE_ML = makeSyringe(1, 0.01);
const THREE = makeSyringe(3, 0.1);
const SIX = makeSyringe(6, 0.2);
const TWELVE = makeSyringe(12, 0.2);
const SIXTY = makeSyringe(60, 1);

function goat(kg: number, id = `goat-${kg}`): Animal {
  return makeAnimal({ id, name: id, lastWeight: { mass: kilograms(kg), atMs: hoursAgo(500) } });
}

function scores(animals: Animal[], syringes: Syringe[], amount: PowderAmount = ONE_PACKET): DilutionScore[] {
  return scoreDilutions({
    medicine: LEVAMISOLE,
    packet: makePacket(),
    amount,
    mode: 'make-up-to',
    animals,
    approvals: [],
    syringes,
  });
}

function volumes(ranked: readonly DilutionScore[]): number[] {
  return ranked.map(({ dilution }) => Math.round(dilution.perPacket.value));
}

function at(ranked: readonly DilutionScore[], ml: number): DilutionScore {
  const found = ranked.find(({ dilution }) => Math.round(dilution.perPacket.value) === ml);
  if (found === undefined) throw new Error(`no dilution of ${ml} mL`);
  return found;
}

describe('the dilution recommended', () => {
  test('for kids of 4 kg and a 6 mL syringe is a thin one, since a quart’s dose is too small to measure', () => {
    const ranked = scores([goat(4, 'a'), goat(4.5, 'b')], [SIX]);
    expect(at(ranked, 946)).toMatchObject({ animals: 2, measurable: 2 });
    expect(at(ranked, 473).measurable).toBe(0);
    expect(ranked[0]?.dilution.perPacket.value).toBeGreaterThan(946.4);
    expect(ranked[0]?.worst ?? 1).toBeLessThan(at(ranked, 946).worst ?? 0);
  });

  test('for a buck of 90 kg and a 12 mL syringe is not the gallon, which no three draws hold', () => {
    const ranked = scores([goat(90)], [TWELVE]);
    // 90 kg at 12 mg/kg are 1,080 mg: 87 mL of the gallon, and three draws hold 36.
    expect(at(ranked, 3785).measurable).toBe(0);
    expect(ranked[0]?.measurable).toBe(1);
    expect(ranked.at(-1)?.measurable).toBe(0);
  });

  test('for a herd of both is one that measures both', () => {
    const [best] = scores([goat(4), goat(90)], [ONE_ML, THREE, SIX, TWELVE]);
    expect(best?.measurable).toBe(2);
  });

  test('is the packet’s own volume where nothing tells the others apart', () => {
    expect(volumes(scores([], [SIX]))[0]).toBe(946);
  });

  test('saves draws where the doses are as sure', () => {
    const ranked = scores([goat(40)], [TWELVE]);
    const [best] = ranked;
    for (const other of ranked) {
      if ((other.worst ?? 1) > (best?.worst ?? 0) + 0.02 || other.measurable === 0) continue;
      expect(best?.draws).toBeLessThanOrEqual(other.draws + 0.1);
    }
  });

  test('never leaves an animal unmeasured that another dilution would measure', () => {
    const herd = fc.array(fc.double({ min: 3, max: 120, noNaN: true }), { minLength: 1, maxLength: 6 });
    const shelf = fc.subarray([ONE_ML, THREE, SIX, TWELVE, SIXTY], { minLength: 1 });
    fc.assert(
      fc.property(herd, shelf, (kgs, syringes) => {
        const ranked = scores(
          kgs.map((kg, i) => goat(kg, `g${i}`)),
          syringes,
        );
        const most = Math.max(...ranked.map(({ measurable }) => measurable));
        expect(ranked[0]?.measurable).toBe(most);
        expect(volumes(ranked)).toHaveLength(5);
      }),
      { numRuns: 60 },
    );
  });
});

describe('the figures beside a dilution', () => {
  test('say how much the herd takes: the check table’s volumes, added up', () => {
    const animals = CHECK_VALUES_12.map(({ lb }) => goat(lb * 0.45359237, `g${lb}`));
    const ranked = scores(animals, [THREE, TWELVE]);
    const sum = (of: (row: (typeof CHECK_VALUES_12)[number]) => number) =>
      CHECK_VALUES_12.reduce((total, row) => total + of(row), 0);
    expect(at(ranked, 946).needed.value).toBeCloseTo(
      sum(({ oneQuart }) => oneQuart),
      2,
    );
    expect(at(ranked, 1893).needed.value).toBeCloseTo(
      sum(({ twoQuarts }) => twoQuarts),
      2,
    );
  });

  test('say how many jugs that is', () => {
    const herd = Array.from({ length: 50 }, (_, i) => goat(90, `g${i}`));
    // 50 times 90 kg at 12 mg/kg are 54,000 mg: more than the 46,800 mg of one packet.
    expect(at(scores(herd, [SIXTY]), 946).jugs).toBe(2);
    expect(at(scores(herd, [SIXTY], { kind: 'packets', count: 2 }), 946).jugs).toBe(1);
  });

  test('leave out animals without a rule, and count those known by class only', () => {
    const never = makeAnimal({ id: 'new', lastWeight: null });
    expect(at(scores([goat(40), never], [SIX, TWELVE]), 946)).toMatchObject({ animals: 2, guessed: 1 });
  });

  test('tell two dilutions apart by the first demand on which they differ', () => {
    const ranked = scores([goat(90)], [TWELVE]);
    expect(reasonBetween(at(ranked, 946), at(ranked, 3785), makePacket())).toBe('measurable');
    const none = scores([], [SIX]);
    expect(reasonBetween(at(none, 946), at(none, 1048), makePacket())).toBe('own');
    expect(reasonBetween(at(none, 1893), at(none, 473), makePacket())).toBe('printed');
  });

  test('are there in time for a herd of 300', () => {
    const herd = Array.from({ length: 300 }, (_, i) => goat(5 + i / 3, `g${i}`));
    const from = performance.now();
    scores(herd, [ONE_ML, THREE, SIX, TWELVE, SIXTY]);
    expect(performance.now() - from).toBeLessThan(1500);
  });
});

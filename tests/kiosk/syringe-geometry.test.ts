import fc from 'fast-check';
import { mount, unmount } from 'svelte';
import { expect, test } from 'vitest';
import { SYRINGE_CATALOGUE } from '../../core/dosing/syringe.ts';
import Syringe from '../../kiosk/drawings/Syringe.svelte';
import { numeralStep, shareOfBarrel, syringeMarks } from '../../kiosk/drawings/syringe-geometry.ts';

async function plungerAt(capacityMl: number, graduationMl: number, mark: number): Promise<number> {
  const drawing = mount(Syringe, {
    target: document.body,
    props: { capacityMl, graduationMl, marksMl: [mark], barrelMm: 50 },
  });
  const at = Number(document.querySelector('svg')?.dataset['plunger']);
  await unmount(drawing);
  return at;
}

test('the plunger stands in proportion to its mark', async () => {
  const empty = await plungerAt(6, 0.1, 0);
  const full = await plungerAt(6, 0.1, 6);
  expect(full - empty).toBeCloseTo(50, 3);
  expect((await plungerAt(6, 0.1, 3.3)) - empty).toBeCloseTo(50 * (3.3 / 6), 3);
  expect((await plungerAt(12, 0.2, 3)) - empty).toBeCloseTo(12.5, 3);
});

test('the drawn mark and the plunger agree for every mark of every syringe', () => {
  for (const { capacity, graduation } of SYRINGE_CATALOGUE) {
    for (const mark of syringeMarks(capacity.value, graduation.value)) {
      expect(mark.at).toBeCloseTo(shareOfBarrel(mark.ml, capacity.value), 9);
    }
  }
});

test.each(SYRINGE_CATALOGUE.map((syringe) => [syringe.id, syringe] as const))(
  '%s carries every mark once, from zero to its capacity',
  (_id, { capacity, graduation }) => {
    const marks = syringeMarks(capacity.value, graduation.value);
    expect(marks).toHaveLength(Math.round(capacity.value / graduation.value) + 1);
    expect(marks[0]).toMatchObject({ at: 0, ml: 0, numeral: expect.stringMatching(/^0/) });
    expect(marks.at(-1)).toMatchObject({ at: 1, ml: capacity.value });
    const numerals = marks.filter(({ numeral }) => numeral !== null);
    expect(numerals.length).toBeGreaterThanOrEqual(3);
    expect(numerals.length).toBeLessThanOrEqual(8);
    expect(new Set(numerals.map(({ numeral }) => numeral)).size).toBe(numerals.length);
  },
);

test('numerals stand on whole marks', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 60 }),
      fc.constantFrom(0.01, 0.1, 0.2, 0.5, 1),
      (capacity, graduation) => {
        const marks = numeralStep(capacity, graduation) / graduation;
        expect(Math.abs(marks - Math.round(marks))).toBeLessThan(1e-6);
      },
    ),
  );
});

test('a volume outside the barrel is drawn at its end, not beyond', () => {
  expect(shareOfBarrel(7, 6)).toBe(1);
  expect(shareOfBarrel(-1, 6)).toBe(0);
});

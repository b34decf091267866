import { expect, test } from 'vitest';
import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { afterDoseView } from '../../../server/view/after-view.ts';
import { AfterDoseView } from '../../../shared/after-dose.ts';

test('after levamisole come signs with their times, the vet, and what else may be due', () => {
  const after = afterDoseView('levamisole', SHIPPED);
  expect(AfterDoseView.parse(after)).toEqual(after);
  // Signs from 5 minutes in Angora goats, and up to 63 minutes after three times the dose in kids.
  expect(after?.watch).toMatchObject({ firstMinutes: 5, lastMinutes: 63 });
  expect(after?.watch?.signs).toMatch(/drooling/i);
  expect(after?.watch?.remedy).toMatch(/call the vet/i);
  expect(after?.extras).toHaveLength(1);
});

test('nothing is said where no source read gives signs and times, or of a medicine nobody knows', () => {
  expect(afterDoseView('fenbendazole', SHIPPED)).toBeNull();
  expect(afterDoseView('gone', SHIPPED)).toBeNull();
});

test('a medicine kept cold says so though nothing else is known', () => {
  const cold = SHIPPED.map((medicine) => ({ ...medicine, refrigerate: true }));
  expect(afterDoseView('fenbendazole', cold)).toEqual({ watch: null, extras: [], refrigerate: true });
});

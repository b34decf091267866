import { expect, test } from 'vitest';
import { jugView } from '../../../server/view/jug-view.ts';
import { JugView } from '../../../shared/jug.ts';
import { type TestBarn, testBarn } from '../make/test-barn.ts';

function newest(test: TestBarn, formulary = test.barn.context.memory.formulary) {
  const [jug] = test.barn.context.memory.jugs;
  if (jug === undefined) throw new Error('no jug');
  return JugView.parse(jugView(jug, test.clock.wallMs, formulary));
}

function openBottle(test: TestBarn, expiry: { year: number; month: number }): void {
  const bottle = { type: 'open-bottle', presentationId: 'fenbendazole-100', volumeMl: 1000 } as const;
  expect(test.send({ ...bottle, expiry })).toMatchObject({ ok: true });
}

test('a jug says by what its use-by is reckoned', () => {
  const jug = newest(testBarn());
  expect(jug.keeps).toMatchObject({ unit: 'hours', value: 12, evidence: 'own-guard', monthFirst: false });
  expect(Date.parse(jug.useBy) - Date.parse(jug.mixedAt)).toBe(12 * 3_600_000);
});

test('a bottle says the days it stays open, and whether its printed month is over before', () => {
  const barn = testBarn();
  openBottle(barn, { year: 2099, month: 1 });
  const long = newest(barn);
  expect(long.keeps).toMatchObject({ unit: 'days', monthFirst: false });
  expect(long.keeps?.source).not.toBe('');
  // The clock of the test stands in spring 2027.
  const soon = testBarn();
  openBottle(soon, {
    year: new Date(soon.clock.wallMs).getUTCFullYear(),
    month: 1 + new Date(soon.clock.wallMs).getUTCMonth(),
  });
  expect(newest(soon).keeps).toEqual({ ...long.keeps, monthFirst: true });
});

test('a jug of what is no longer known says nothing of it', () => {
  expect(newest(testBarn(), []).keeps).toBeNull();
});

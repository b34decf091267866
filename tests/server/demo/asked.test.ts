import { expect, test } from 'vitest';
import { askedInWork } from '../../../server/demo/asked.ts';
import { testBarn } from '../make/test-barn.ts';

test('while nothing is in hand nothing is asked for on the scales', () => {
  const kiosk = testBarn();
  expect(askedInWork(kiosk.barn.context.memory)).toBeNull();
  kiosk.store.close();
});

test('with a jug in hand the next animal is brought, and led off once nobody knows why it stands there', () => {
  const kiosk = testBarn();
  kiosk.send({ type: 'take-jug', jugId: 'jug-1' });
  kiosk.send({ type: 'prove-jug', jugId: 'jug-1', deliberate: true });
  kiosk.weigh(0, 1500);
  expect(askedInWork(kiosk.barn.context.memory)).toEqual({ do: 'bring', animalId: 'goat-1' });
  kiosk.weigh(30_000, 1500);
  expect(askedInWork(kiosk.barn.context.memory)).toEqual({ do: 'walk-off' });
  kiosk.store.close();
});

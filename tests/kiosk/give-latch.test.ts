import { expect, test } from 'vitest';
import { GiveLatch } from '../../kiosk/connection/give-latch.ts';

test('it lets one give through for one offer', () => {
  const latch = new GiveLatch();
  expect(latch.close('o1', 'i1')).toBe(true);
  expect(latch.close('o1', 'i2')).toBe(false);
  expect(latch.close('o1', 'i3')).toBe(false);
  expect(latch.offerId).toBe('o1');
});

test('another offer is another matter', () => {
  const latch = new GiveLatch();
  latch.close('o1', 'i1');
  expect(latch.close('o2', 'i2')).toBe(true);
});

test('it opens when its own give was refused, and for no other intent', () => {
  const latch = new GiveLatch();
  latch.close('o1', 'i1');
  latch.refused('another');
  latch.refused(null);
  expect(latch.close('o1', 'i2')).toBe(false);
  latch.refused('i1');
  expect(latch.close('o1', 'i3')).toBe(true);
});

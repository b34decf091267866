import { expect, test, vi } from 'vitest';
import { testBarn } from '../make/test-barn.ts';

test('a practice round is not begun while a jug is in hand, and is not begun twice', () => {
  const beginPractice = vi.fn();
  const kiosk = testBarn(':memory:', undefined, { beginPractice });
  expect(kiosk.send({ type: 'take-jug', jugId: 'jug-1' }).ok).toBe(true);
  expect(kiosk.send({ type: 'practice-begin' })).toMatchObject({ code: 'work-waits' });
  expect(beginPractice).not.toHaveBeenCalled();
  kiosk.send({ type: 'put-jug-down' });
  expect(kiosk.send({ type: 'practice-begin' }).ok).toBe(true);
  expect(beginPractice).toHaveBeenCalledOnce();
  kiosk.store.close();
  const practising = testBarn();
  expect(practising.send({ type: 'practice-begin' })).toMatchObject({ code: 'wrong-state' });
  practising.store.close();
});

import { expect, test } from 'vitest';
import { PAIRING_MS, Pairing } from '../../../server/network/pairing.ts';

function opened() {
  const pairing = new Pairing();
  pairing.open('act', 0);
  const code = pairing.at(0)?.code ?? '';
  return { pairing, code, wrong: code === '00000000' ? '00000001' : '00000000' };
}

test('a code has eight digits and is another each time', () => {
  const codes = Array.from({ length: 50 }, () => opened().code);
  expect(codes.filter((code) => /^\d{8}$/.test(code)).length).toBe(50);
  expect(new Set(codes).size).toBe(50);
});

test('the right code lets one device in, once', () => {
  const { pairing, code } = opened();
  expect([pairing.use(code, 1), pairing.use(code, 2)]).toEqual(['act', 'no-pairing']);
  expect(pairing.endedAt(3)).toBe('paired');
});

test('after two minutes it is worth nothing', () => {
  const { pairing, code } = opened();
  expect(pairing.at(PAIRING_MS - 1)).not.toBeNull();
  expect(pairing.use(code, PAIRING_MS)).toBe('no-pairing');
  expect(pairing.endedAt(PAIRING_MS)).toBe('out-of-time');
});

test('five wrong codes end it, and the right one comes too late', () => {
  const { pairing, code, wrong } = opened();
  expect(Array.from({ length: 5 }, () => pairing.use(wrong, 1))).toEqual(Array(5).fill('wrong'));
  expect(pairing.use(code, 2)).toBe('no-pairing');
  expect(pairing.endedAt(2)).toBe('too-many-tries');
});

test('four wrong codes leave it open', () => {
  const { pairing, code, wrong } = opened();
  for (const each of [wrong, '', 'x'.repeat(8), wrong]) expect(pairing.use(each, 1)).toBe('wrong');
  expect(pairing.use(code, 1)).toBe('act');
});

test('stopped, or opened anew, the code before is worth nothing', () => {
  const { pairing, code } = opened();
  pairing.stop();
  expect(pairing.use(code, 1)).toBe('no-pairing');
  pairing.open('follow', 2);
  expect(pairing.at(2)?.code === code ? 'same' : pairing.use(code, 3)).toBe('wrong');
});

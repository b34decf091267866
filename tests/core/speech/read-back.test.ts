import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { digitByDigit, pairWords, readBackVolume, readBackWords } from '../../../core/speech/read-back.ts';

const read = (said: string): number | null => readBackVolume(said.split(' '));

describe('a dose read back', () => {
  test.each([
    ['given three point three mils', 3.3],
    ['given zero point eight mils', 0.8],
    ['given zero point two five mils', 0.25],
    ['given one three mils', 13],
    ['given three zero mils', 30],
    ['given one zero point five mils', 10.5],
    ['given zero mils', 0],
  ])('%s', (said, volume) => {
    expect(read(said)).toBe(volume);
  });

  test.each([
    'given three point three',
    'three point three mils',
    'given mils',
    'given point five mils',
    'given three point mils',
    'given zero three mils',
    'given thirteen mils',
    'given thirty three mils',
    'given three oh mils',
    'given one two zero mils',
    'given three point one two three mils',
    'given three point three point three mils',
    'given',
    '',
    'drench',
  ])('"%s" is none', (said) => {
    expect(read(said)).toBeNull();
  });

  test('what the kiosk asks for is read back as the same volume', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9999 }), (hundredths) => {
        const volume = hundredths / 100;
        expect(readBackVolume(readBackWords(volume))).toBe(volume);
      }),
    );
  });
});

test('digits and pairs', () => {
  expect(digitByDigit('4017')).toEqual(['four', 'zero', 'one', 'seven']);
  expect(() => digitByDigit('4a')).toThrow('not a digit');
  expect(() => digitByDigit('4 ')).toThrow('not a digit');
  expect(pairWords('07')).toBeNull();
  expect(pairWords('17')).toEqual(['seventeen']);
  expect(pairWords('40')).toEqual(['forty']);
  expect(pairWords('42')).toEqual(['forty', 'two']);
});

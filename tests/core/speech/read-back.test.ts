import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { digitByDigit, pairWords, readVolume, volumeWords } from '../../../core/speech/read-back.ts';

const read = (said: string): number | null => readVolume(said.split(' '));

describe('a volume said in words', () => {
  test.each([
    ['three point three', 3.3],
    ['zero point eight', 0.8],
    ['zero point two five', 0.25],
    ['thirteen', 13],
    ['one three', 13],
    ['thirty', 30],
    ['thirty three', 33],
    ['three three', 33],
    ['one two zero', 120],
    ['ten point five', 10.5],
    ['zero', 0],
  ])('%s', (said, volume) => {
    expect(read(said)).toBe(volume);
  });

  test.each([
    'point five',
    'three point',
    'zero three',
    'thirty ten',
    'thirteen two',
    'twenty zero',
    'one two three four',
    'three point one two three four',
    'three point ten',
    'three point three point three',
    '',
    'drench',
  ])('"%s" is none', (said) => {
    expect(read(said)).toBeNull();
  });

  test('what the kiosk asks for is read back as the same volume', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999_999 }), (thousandths) => {
        const volume = thousandths / 1000;
        expect(readVolume(volumeWords(volume))).toBeCloseTo(volume, 9);
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

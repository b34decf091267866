import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromSteps } from '../../../core/quantity/round.ts';
import { showVolume } from '../../../core/quantity/show.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { heardNumber } from '../../../core/speech/heard-number.ts';
import { SPOKEN_LANGUAGES } from '../../../core/speech/language.ts';
import {
  digitsIfMisheard,
  spokenDigits,
  spokenNumber,
  spokenTag,
} from '../../../core/speech/spoken-number.ts';

const language = fc.constantFrom(...SPOKEN_LANGUAGES);
const form = fc.constantFrom('alone', 'masculine', 'feminine');

describe('numbers in words', () => {
  test.each([
    ['0.5', 'zero point five', 'cero punto cinco'],
    ['1.65', 'one point six five', 'uno punto seis cinco'],
    ['15.4', 'fifteen point four', 'quince punto cuatro'],
    ['30.0', 'thirty', 'treinta'],
    ['21', 'twenty one', 'veintiuno'],
    ['46', 'forty six', 'cuarenta y seis'],
    ['100', 'one hundred', 'cien'],
    ['101.05', 'one hundred one point zero five', 'ciento uno punto cero cinco'],
    ['215', 'two hundred fifteen', 'doscientos quince'],
    ['1,250', 'one thousand two hundred fifty', 'mil doscientos cincuenta'],
    ['21,000', 'twenty one thousand', 'veintiún mil'],
    ['−3', 'minus three', 'menos tres'],
  ])('%s', (shown, en, es) => {
    expect(spokenNumber(shown, 'en')).toBe(en);
    expect(spokenNumber(shown, 'es')).toBe(es);
  });

  test('Spanish one agrees with what it stands before, but not after a point', () => {
    expect(spokenNumber('1', 'es', 'masculine')).toBe('un');
    expect(spokenNumber('21', 'es', 'masculine')).toBe('veintiún');
    expect(spokenNumber('31', 'es', 'feminine')).toBe('treinta y una');
    expect(spokenNumber('201', 'es', 'feminine')).toBe('doscientas una');
    expect(spokenNumber('1.5', 'es', 'feminine')).toBe('uno punto cinco');
  });

  test.each(['', '.5', '5.', 'abc', '1e3', '1,000,000'])('"%s" is refused', (shown) => {
    expect(() => spokenNumber(shown, 'en')).toThrow(RangeError);
  });

  test('digits beyond digits are refused', () => {
    expect(() => spokenDigits('1 2', 'en')).toThrow(RangeError);
    expect(() => spokenDigits('12a', 'en')).toThrow(RangeError);
  });

  test('what sounds like another number is read again by its digits', () => {
    expect(digitsIfMisheard('15', 'en')).toBe('one five');
    expect(digitsIfMisheard('50.0', 'en')).toBe('five zero');
    expect(digitsIfMisheard('115.4', 'en')).toBe('one one five point four');
    expect(digitsIfMisheard('54', 'en')).toBeNull();
    expect(digitsIfMisheard('3.3', 'en')).toBeNull();
    expect(digitsIfMisheard('67', 'es')).toBe('seis siete');
    expect(digitsIfMisheard('15', 'es')).toBeNull();
  });

  test('a tag is read digit by digit, three at a time', () => {
    expect(spokenTag('840003', 'en')).toBe('eight four zero, zero zero three');
    expect(spokenTag('7', 'es')).toBe('siete');
  });
});

describe('back from words', () => {
  test('every whole number up to 999,999 comes back, in every form', () => {
    fc.assert(
      fc.property(fc.integer({ min: -999_999, max: 999_999 }), language, form, (value, lang, as) => {
        expect(heardNumber(spokenNumber(String(value), lang, as), lang)).toBe(value === 0 ? 0 : value);
      }),
      { numRuns: 2000 },
    );
  });

  test('every dose the screen can show comes back, as a number and by its digits', () => {
    const steps = fc.integer({ min: 1, max: 4000 });
    const graduation = fc.constantFrom(0.01, 0.02, 0.05, 0.1, 0.2, 0.25, 0.5, 1, 2, 5);
    fc.assert(
      fc.property(steps, graduation, language, (count, mark, lang) => {
        const volume = fromSteps(count, mark);
        const shown = showVolume(millilitres(volume), millilitres(mark)).replace(' mL', '');
        expect(heardNumber(spokenNumber(shown, lang), lang)).toBe(volume);
        expect(heardNumber(spokenDigits(shown.replaceAll(',', ''), lang), lang)).toBe(volume);
      }),
      { numRuns: 2000 },
    );
  });

  test.each([
    '',
    'point five',
    'five point',
    'fifty twenty',
    'goat',
    'five point fifteen',
    'one hundred zero',
  ])('"%s" says no number', (text) => expect(heardNumber(text, 'en')).toBeNull());
});

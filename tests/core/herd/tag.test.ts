import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkTag, splitReserved } from '../../../core/herd/tag.ts';

// ISO 11784: three digits of country or manufacturer, then a national code of 38 bits, at most 2^38 - 1.
const LARGEST = '274877906943';

describe('a tag number passes', () => {
  test.each(['840003123456789', '900000000000001', '998000000000001', `124${LARGEST}`, '001000000000000'])(
    '%s',
    (tag) => {
      expect(checkTag(tag)).toEqual({ ok: true, tag });
    },
  );

  test('and keeps every digit, leading zeros too, for any country and code', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 998 }),
        fc.integer({ min: 0, max: 274_877_906_943 }),
        (country, code) => {
          const tag = String(country).padStart(3, '0') + String(code).padStart(12, '0');
          expect(checkTag(tag)).toEqual({ ok: true, tag });
        },
      ),
    );
  });
});

describe('a tag number is refused', () => {
  test.each([
    ['', 'not-15-digits'],
    ['84000312345678', 'not-15-digits'],
    ['8400031234567890', 'not-15-digits'],
    ['840 00312345678', 'not-15-digits'],
    ['84000312345678X', 'not-15-digits'],
    ['840003123456789\n', 'not-15-digits'],
    ['٨٤٠٠٠٣١٢٣٤٥٦٧٨٩', 'not-15-digits'],
    ['999000000000001', 'test-code'],
    ['000000000000001', 'no-country'],
    ['840274877906944', 'number-too-large'],
    ['840999999999999', 'number-too-large'],
  ])('%j: %s', (digits, why) => {
    expect(checkTag(digits)).toEqual({ ok: false, why });
  });
});

describe('the reserved bits of a tag', () => {
  test.each([
    [0, { retag: 0, userInfo: 0 }],
    [14339, { retag: 7, userInfo: 0 }],
    [0b001_00000_000000, { retag: 1, userInfo: 0 }],
    [0b000_00001_000000, { retag: 0, userInfo: 1 }],
    [0b000_11111_111111, { retag: 0, userInfo: 31 }],
    [16383, { retag: 7, userInfo: 31 }],
  ])('%i hold %j', (reserved, fields) => {
    expect(splitReserved(reserved)).toEqual(fields);
  });

  test.each([-1, 16384, 1.5, Number.NaN])('%d are none', (reserved) => {
    expect(splitReserved(reserved)).toBeNull();
  });
});

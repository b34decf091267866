import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decodeTelegram, encodeTelegram, telegramChecksum } from '../../../core/herd/telegram.ts';
import { TELEGRAMS } from '../../oracles/serial-frames-wand.ts';

const code = fc.record({
  tag: fc
    .tuple(fc.integer({ min: 0, max: 999 }), fc.integer({ min: 0, max: 274_877_906_943 }))
    .map(([country, national]) => `${String(country).padStart(3, '0')}${String(national).padStart(12, '0')}`),
  animal: fc.boolean(),
  reserved: fc.integer({ min: 0, max: 16_383 }),
  extraBlock: fc.boolean(),
  extra: fc.integer({ min: 0, max: 0xffffff }),
});

/** The places of the 24 bits behind the checksum, which nothing protects. */
const UNPROTECTED = [0, 1, 2].flatMap((byte) =>
  Array.from({ length: 8 }, (_, bit) => 11 + 9 * (10 + byte) + bit),
);

function flip(hex: string, places: readonly number[]): string {
  const bits = places.reduce((all, place) => all ^ (1n << BigInt(127 - place)), BigInt(`0x${hex}`));
  return bits.toString(16).padStart(32, '0');
}

describe('a telegram of 128 bits', () => {
  test.each(TELEGRAMS)(
    'of $tag is encoded as $hex ($source)',
    ({ hex, tag, animal, reserved, extraBlock, extra }) => {
      expect(encodeTelegram({ tag, animal, reserved, extraBlock, extra })).toBe(hex);
    },
  );

  test.each(TELEGRAMS)('$hex says $tag ($source)', ({ hex, tag, animal, reserved, extraBlock, extra }) => {
    expect(decodeTelegram(hex)).toEqual({ ok: true, code: { tag, animal, reserved, extraBlock, extra } });
    expect(decodeTelegram(hex.toUpperCase()).ok).toBe(true);
  });

  test.each(TELEGRAMS)(
    'has the checksum $checksum over the bytes $codeBytes ($source)',
    ({ codeBytes, checksum }) => {
      expect(telegramChecksum(Buffer.from(codeBytes, 'hex'))).toBe(checksum);
    },
  );

  test('has a checksum that is 0x2189 of the digits 1 to 9, as published for this kind', () => {
    expect(telegramChecksum(Buffer.from('123456789'))).toBe(0x2189);
  });

  test('gives back whatever was put into it', () => {
    fc.assert(
      fc.property(code, (of) => {
        expect(decodeTelegram(encodeTelegram(of))).toEqual({ ok: true, code: of });
      }),
    );
  });

  test('is refused with one to three bits wrong anywhere but in the bits nothing protects', () => {
    const guarded = Array.from({ length: 128 }, (_, place) => place).filter(
      (place) => !UNPROTECTED.includes(place),
    );
    const places = fc.uniqueArray(fc.constantFrom(...guarded), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(code, places, (of, wrong) => {
        expect(decodeTelegram(flip(encodeTelegram(of), wrong)).ok).toBe(false);
      }),
      { numRuns: 3000 },
    );
  });

  test('is refused with every single bit wrong, one after the other', () => {
    const hex = TELEGRAMS[0]?.hex ?? '';
    const passed = Array.from({ length: 128 }, (_, place) => place).filter(
      (place) => decodeTelegram(flip(hex, [place])).ok,
    );
    expect(passed).toEqual(UNPROTECTED);
  });

  test('keeps its number though the unprotected bits are all wrong', () => {
    fc.assert(
      fc.property(code, (of) => {
        const read = decodeTelegram(flip(encodeTelegram(of), UNPROTECTED));
        expect(read).toEqual({ ok: true, code: { ...of, extra: of.extra ^ 0xffffff } });
      }),
    );
  });

  test.each([
    ['', 'not-128-bits'],
    ['00339a080402079f804079778804020', 'not-128-bits'],
    ['0x339a080402079f8040797788040201', 'not-128-bits'],
    ['80339a080402079f8040797788040201', 'no-header'],
    ['00139a080402079f8040797788040201', 'no-header'],
    // The first control bit stands in place 19.
    [flip('00339a080402079f8040797788040201', [19]), 'out-of-step'],
    [flip('00339a080402079f8040797788040201', [11]), 'bad-checksum'],
    // All zeros behind the header have no control bits; shifted by one they do not fit either.
    [`002${'0'.repeat(29)}`, 'out-of-step'],
  ])('%j is none: %s', (hex, why) => {
    expect(decodeTelegram(hex)).toEqual({ ok: false, why });
  });

  test('with a sound checksum and a country of four digits is refused as such', () => {
    const country = 1000n << 38n;
    const bytes = Array.from({ length: 8 }, (_, at) => Number((country >> BigInt(8 * at)) & 0xffn));
    const sum = telegramChecksum(bytes);
    const bits = [...bytes, sum & 0xff, sum >> 8, 0, 0, 0]
      .map((byte) => `${[...byte.toString(2).padStart(8, '0')].reverse().join('')}1`)
      .join('');
    const hex = BigInt(`0b00000000001${bits}`).toString(16).padStart(32, '0');
    expect(decodeTelegram(hex)).toEqual({ ok: false, why: 'no-such-country' });
  });

  test.each([
    { tag: '98200000108842' },
    { tag: '982274877906944' },
    { reserved: 16_384 },
    { reserved: -1 },
    { reserved: 0.5 },
    { extra: 0x1000000 },
  ])('is not made of %j', (wrong) => {
    const sound = { tag: '982000001088420', animal: true, reserved: 0, extraBlock: false, extra: 0 };
    expect(() => encodeTelegram({ ...sound, ...wrong })).toThrow(RangeError);
  });
});

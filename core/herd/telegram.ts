import { MAX_NATIONAL, MAX_RESERVED } from './tag.ts';

/** All that an animal transponder says: the 64 bits of ISO 11784 and the 24 that follow their checksum. */
export interface TagCode {
  /** 15 digits: three of country or manufacturer, twelve of national code. */
  readonly tag: string;
  /** The animal bit. */
  readonly animal: boolean;
  /** Retagging counter, user information and bits kept free, as one number: 0 to 16,383 (included). */
  readonly reserved: number;
  /** Whether `extra` means anything. */
  readonly extraBlock: boolean;
  /** The 24 bits behind the checksum, which no checksum covers: 0 to 16,777,215 (included). */
  readonly extra: number;
}

/** Why 128 bits are no telegram. */
export type TelegramRefusal =
  /** Not 32 digits of base 16. */
  | 'not-128-bits'
  /** It does not begin with ten zeros and a one. */
  | 'no-header'
  /** A control bit that must be one is not: the row is out of step, or a bit is wrong. */
  | 'out-of-step'
  | 'bad-checksum'
  /** A sound telegram whose country does not fit three digits. */
  | 'no-such-country';

/** What a telegram says, or why it says nothing. */
export type TelegramResult =
  | { readonly ok: true; readonly code: TagCode }
  | { readonly ok: false; readonly why: TelegramRefusal };

const HEADER = '00000000001';
const CODE_BYTES = 8;
const EXTRA_BYTES = 3;
/** Behind each byte stands a one, so that the header occurs nowhere else. */
const CONTROL = '1';
const STEP = 9;
const POLYNOMIAL_REFLECTED = 0x8408;

/**
 * The checksum of a telegram: x^16 + x^12 + x^5 + 1, each byte least significant bit first, beginning at 0.
 *
 * Known as CRC-16/KERMIT; of the ASCII digits 1 to 9 it is 0x2189.
 */
export function telegramChecksum(bytes: Iterable<number>): number {
  let sum = 0;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit += 1) sum = sum & 1 ? (sum >>> 1) ^ POLYNOMIAL_REFLECTED : sum >>> 1;
  }
  return sum;
}

/**
 * The 128 bits a full-duplex transponder sends, in the order they go through the air, as 32 digits of base 16.
 *
 * ISO 11785: a header of eleven bits, then eight bytes of code, two of checksum and three of further data, each
 * least significant bit first with a one behind it. Throws `RangeError` for a code that does not fit its fields.
 */
export function encodeTelegram(code: TagCode): string {
  const bytes = littleEndian(codeBits(code), CODE_BYTES);
  const sum = littleEndian(BigInt(telegramChecksum(bytes)), 2);
  const extra = littleEndian(BigInt(within(code.extra, 0xffffff, 'extra')), EXTRA_BYTES);
  const bits = HEADER + [...bytes, ...sum, ...extra].map((byte) => lsbFirst(byte) + CONTROL).join('');
  return BigInt(`0b${bits}`).toString(16).padStart(32, '0');
}

/** Reads 128 bits, given as 32 digits of base 16, back into what the transponder says. */
export function decodeTelegram(hex: string): TelegramResult {
  if (!/^[0-9a-f]{32}$/i.test(hex)) return { ok: false, why: 'not-128-bits' };
  const bits = BigInt(`0x${hex}`).toString(2).padStart(128, '0');
  if (!bits.startsWith(HEADER)) return { ok: false, why: 'no-header' };
  const bytes: number[] = [];
  for (let at = HEADER.length; at < bits.length; at += STEP) {
    if (bits[at + STEP - 1] !== CONTROL) return { ok: false, why: 'out-of-step' };
    bytes.push(Number(littleEndianValue([...bits.slice(at, at + STEP - 1)].map(Number), 1)));
  }
  const code = bytes.slice(0, CODE_BYTES);
  const sum = littleEndianValue(bytes.slice(CODE_BYTES, CODE_BYTES + 2), 8);
  if (sum !== BigInt(telegramChecksum(code))) return { ok: false, why: 'bad-checksum' };
  return fieldsOf(littleEndianValue(code, 8), Number(littleEndianValue(bytes.slice(-EXTRA_BYTES), 8)));
}

/** ISO 11784: animal bit, 14 reserved bits, data block bit, 10 of country, 38 of national code. */
function codeBits(code: TagCode): bigint {
  if (!/^\d{15}$/.test(code.tag)) throw new RangeError(`${code.tag} has not 15 digits`);
  const national = within(Number(code.tag.slice(3)), MAX_NATIONAL, 'national code');
  const reserved = within(code.reserved, MAX_RESERVED, 'reserved field');
  return (
    (BigInt(code.animal) << 63n) |
    (BigInt(reserved) << 49n) |
    (BigInt(code.extraBlock) << 48n) |
    (BigInt(code.tag.slice(0, 3)) << 38n) |
    BigInt(national)
  );
}

function fieldsOf(code: bigint, extra: number): TelegramResult {
  const country = Number((code >> 38n) & 0x3ffn);
  if (country > 999) return { ok: false, why: 'no-such-country' };
  const national = Number(code & 0x3f_ffff_ffffn);
  return {
    ok: true,
    code: {
      tag: `${String(country).padStart(3, '0')}${String(national).padStart(12, '0')}`,
      animal: code >> 63n === 1n,
      reserved: Number((code >> 49n) & 0x3fffn),
      extraBlock: ((code >> 48n) & 1n) === 1n,
      extra,
    },
  };
}

function within(value: number, most: number, name: string): number {
  if (Number.isInteger(value) && value >= 0 && value <= most) return value;
  throw new RangeError(`${name} ${value} is not a whole number from 0 to ${most}`);
}

function littleEndian(value: bigint, count: number): number[] {
  return Array.from({ length: count }, (_, at) => Number((value >> BigInt(8 * at)) & 0xffn));
}

/** The number made of digits of so many bits each, the least significant first. */
function littleEndianValue(digits: readonly number[], bitsEach: number): bigint {
  return digits.reduceRight((value, digit) => (value << BigInt(bitsEach)) | BigInt(digit), 0n);
}

function lsbFirst(byte: number): string {
  return [...byte.toString(2).padStart(8, '0')].reverse().join('');
}

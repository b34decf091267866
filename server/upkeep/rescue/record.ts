/** A value as SQLite stores it. */
export type Stored = null | number | bigint | string | Buffer;

/** Reads a variable-length integer of 1 to 9 bytes. Throws a RangeError where the bytes end before it does. */
export function varint(bytes: Buffer, at: number): { readonly value: number; readonly next: number } {
  let value = 0n;
  for (let i = 0; i < 9; i += 1) {
    const byte = bytes.readUInt8(at + i);
    if (i === 8) return { value: Number(BigInt.asIntN(64, (value << 8n) | BigInt(byte))), next: at + 9 };
    value = (value << 7n) | BigInt(byte & 0x7f);
    if (byte < 0x80) return { value: Number(value), next: at + i + 1 };
  }
  throw new RangeError('a number that does not end');
}

/** Bytes of a value by its serial type: https://www.sqlite.org/fileformat2.html, section 2.1. */
function lengthOf(type: number): number {
  if (type >= 12) return Math.floor((type - 12) / 2);
  const length = [0, 1, 2, 3, 4, 6, 8, 8, 0, 0][type];
  if (length === undefined) throw new RangeError(`no value is of type ${type}`);
  return length;
}

function storedValue(type: number, bytes: Buffer): Stored {
  if (type === 0) return null;
  if (type === 7) return bytes.readDoubleBE(0);
  if (type === 8 || type === 9) return type - 8;
  if (type === 6) {
    const value = bytes.readBigInt64BE(0);
    return Number.isSafeInteger(Number(value)) ? Number(value) : value;
  }
  if (type < 7) return bytes.readIntBE(0, bytes.length);
  return type % 2 === 0 ? Buffer.from(bytes) : bytes.toString('utf8');
}

/** Takes a record apart. Throws a RangeError where its header and its length contradict each other. */
export function readRecord(payload: Buffer): Stored[] {
  const header = varint(payload, 0);
  const types: number[] = [];
  let at = header.next;
  while (at < header.value) {
    const type = varint(payload, at);
    types.push(type.value);
    at = type.next;
  }
  if (at !== header.value) throw new RangeError('the header of a record is cut off');
  const values: Stored[] = [];
  for (const type of types) {
    const end = at + lengthOf(type);
    if (end > payload.length) throw new RangeError('a record is cut off');
    values.push(storedValue(type, payload.subarray(at, end)));
    at = end;
  }
  if (at !== payload.length) throw new RangeError('a record is longer than it says');
  return values;
}

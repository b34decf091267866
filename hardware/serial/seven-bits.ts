import type { Framed, Framer } from './framed.ts';

/** Stands for a byte that arrived with wrong parity: no format knows it, so the frame around it falls. */
const BROKEN = 0xff;

/**
 * What a line of seven bits and even parity is sent through a port of eight bits: the eighth bit makes the number of
 * ones even.
 */
export function withEvenParity(bytes: Uint8Array): Uint8Array {
  return bytes.map((byte) => (hasEvenOnes(byte & 0x7f) ? byte & 0x7f : byte | 0x80));
}

/** The seven bits of each byte; one whose number of ones is odd becomes 0xFF, which is in no frame. */
export function withoutEvenParity(bytes: Uint8Array): Uint8Array {
  return bytes.map((byte) => (hasEvenOnes(byte) ? byte & 0x7f : BROKEN));
}

/** A framer for a line of seven bits and even parity, read through a port of eight. */
export function sevenBitFramer(inner: Framer): Framer {
  return {
    push: (chunk: Uint8Array): Framed[] => inner.push(withoutEvenParity(chunk)),
    get pendingBytes() {
      return inner.pendingBytes;
    },
  };
}

function hasEvenOnes(byte: number): boolean {
  const folded = byte ^ (byte >> 4);
  // The sixteen bits tell for each half byte whether its number of ones is odd.
  return ((0x6996 >> (folded & 0xf)) & 1) === 0;
}

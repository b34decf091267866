import fc from 'fast-check';

/** The bytes of a text, one each. */
export function bytes(text: string): Uint8Array {
  return Uint8Array.from(Buffer.from(text, 'latin1'));
}

/** A byte string cut at the places given (each a share of its length), as a port may deliver it. */
export function cut(whole: Uint8Array, places: readonly number[]): Uint8Array[] {
  const ends = [...places.map((place) => Math.floor(place * whole.length)), whole.length].sort(
    (a, b) => a - b,
  );
  return ends.map((end, index) => whole.subarray(ends[index - 1] ?? 0, end));
}

/** Up to 30 places to cut at. */
export const cuts = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 30 });

/** Rubbish that looks dangerous: any bytes, but rich in terminators and format characters. */
export function rubbish(maxLength: number): fc.Arbitrary<Uint8Array> {
  const byte = fc.oneof(
    { weight: 2, arbitrary: fc.integer({ min: 0, max: 255 }) },
    { weight: 3, arbitrary: fc.constantFrom(...bytes('\r\n\r\nST,GUNTOL+-.0123456789 kglb\x02\x1b')) },
  );
  return fc.array(byte, { maxLength }).map((list) => Uint8Array.from(list));
}

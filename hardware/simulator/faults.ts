import { between, type Random } from './random.ts';

/** Something that goes wrong with the bytes a device sends: takes what it wrote, gives what gets through. */
export type ByteFault = (bytes: Uint8Array) => Uint8Array;

/** Loses each byte with this chance (0 to 1). */
export function dropByte(random: Random, chance: number): ByteFault {
  return (bytes) => bytes.filter(() => random() >= chance);
}

/** Puts random bytes, 1 to `most` of them, before a write with this chance (0 to 1). */
export function noise(random: Random, chance: number, most: number): ByteFault {
  return (bytes) => {
    if (random() >= chance) return bytes;
    const count = Math.floor(between(random, 1, most + 1));
    const rubbish = Array.from({ length: count }, () => Math.floor(256 * random()));
    return Uint8Array.of(...rubbish, ...bytes);
  };
}

/** Lets nothing through: the device has power, but no word comes. */
export function stall(): ByteFault {
  return () => new Uint8Array(0);
}

/** Several faults at once: the last one given works nearest to the device. */
export function together(...faults: readonly ByteFault[]): ByteFault {
  return (bytes) => faults.reduceRight((left, fault) => fault(left), bytes);
}

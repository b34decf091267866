import { grams } from '../../core/quantity/mass.ts';
import { patternFormat } from '../../hardware/scale/pattern.ts';
import type { ScaleProfile } from '../../hardware/scale/profile.ts';
import { scaleDriver } from '../../hardware/scale/scale-driver.ts';
import { encodeWandLine, type WandForm } from '../../hardware/simulator/encode-wand.ts';
import { fieldOf } from '../../hardware/simulator/indication.ts';
import { between, seededRandom } from '../../hardware/simulator/random.ts';
import { LineReader } from '../../hardware/wand/line-reader.ts';
import { wandDriver } from '../../hardware/wand/wand-driver.ts';
import { FORMAT_CASES, type FormatCase } from './scale/format-cases.ts';

/** A weight whose every shortening and every digit doubled is another weight: 123.45 kg. */
const STANDING = { steps: 12_345, moving: false, net: false, range: 'within' } as const;
const FACE = { unit: 'kg', division: grams(10) } as const;
const TRUTH = 123_450;
const TAG = '982000123456789';
/** The line forms of wands. */
export const WAND_FORMS: readonly WandForm[] = ['short', 'full', 'long', 'digits'];
/**
 * Stands where a frame is torn. A head that meets the tail of another at the same place is a frame, byte for byte,
 * and no format without a checksum can tell; how single lost bytes are met is tested apart.
 */
const TORN = 0xff;

/** What fuzzing needs of a format. */
export type Fuzzed = Pick<FormatCase, 'name' | 'make' | 'encode' | 'unitIsSet'>;

/** Lines of no common format, read by an expression. */
const PATTERN_CASE: Fuzzed = {
  name: 'pattern',
  unitIsSet: false,
  make: () =>
    patternFormat({
      pattern: '(?:(?<stable>R)|(?<unstable>M))(?:G|(?<net>N)) *(?<value>-?\\d+\\.\\d+) (?<unit>kg|g|lb|oz)',
    }),
  encode: (shown, face) => Buffer.from(`RG${fieldOf(shown, face, 9)} ${face.unit}\r\n`, 'latin1'),
};

/** Every decoder of scales. */
export const FUZZED: readonly Fuzzed[] = [...FORMAT_CASES, PATTERN_CASE];

/** A format as it is set up for what is sent here, and one whole frame. */
export function sentBy(of: Fuzzed): { readonly profile: ScaleProfile; readonly frame: Uint8Array } {
  return { profile: of.make(of.unitIsSet ? { unit: FACE.unit } : {}), frame: of.encode(STANDING, FACE) };
}

/** What a fuzz run found. */
export interface FuzzReport {
  readonly name: string;
  readonly bytes: number;
  readonly readings: number;
  /** Whole frames that were sent. */
  readonly sent: number;
  /** Masses read that were never shown; must be empty. */
  readonly wrong: readonly number[];
  /** Bytes that no frame and no discard stands for; must be 0. */
  readonly unaccounted: number;
  /** The most bytes a framer said it held. */
  readonly mostHeld: number;
  readonly ms: number;
}

/** Sends half frames, noise, and now and then whole frames until so many bytes are sent; the same seed, the same row. */
export function fuzz(of: Fuzzed, total: number, seed: number): FuzzReport {
  const random = seededRandom(seed);
  const { profile, frame } = sentBy(of);
  const framer = profile.createFramer();
  const wrong: number[] = [];
  let [bytes, sent, readings, accounted, mostHeld] = [0, 0, 0, 0, 0];
  // The driver cuts for itself; this framer beside it only keeps the books.
  const push = scaleDriver(profile, 'bench', () => 0).openSession((one) => {
    if (one.kind !== 'item' || one.item.fault !== undefined) return;
    readings += 1;
    if (one.item.mass.value !== TRUTH) wrong.push(one.item.mass.value);
  });
  const from = performance.now();
  while (bytes < total) {
    const pick = random();
    const chunk = pick < 0.25 ? frame : pick < 0.75 ? torn(frame, random) : noise(random);
    if (chunk === frame) sent += 1;
    push(chunk);
    for (const one of framer.push(chunk)) accounted += one.kind === 'line' ? one.text.length + 2 : one.bytes;
    mostHeld = Math.max(mostHeld, framer.pendingBytes);
    bytes += chunk.length;
  }
  const ms = performance.now() - from;
  const unaccounted = bytes - accounted - framer.pendingBytes;
  return { name: of.name, bytes, readings, sent, wrong, unaccounted, mostHeld, ms };
}

/** A wand's lines, fuzzed alike; a number read that was not on the tag is wrong. */
export function fuzzWand(form: WandForm, total: number, seed: number): FuzzReport {
  const random = seededRandom(seed);
  const code = { tag: TAG, animal: true, reserved: 0, extraBlock: false, extra: 0 };
  const frame = Buffer.from(`${encodeWandLine(code, form)}\r\n`, 'latin1');
  const wrong: number[] = [];
  let [bytes, sent, readings, accounted, mostHeld, now] = [0, 0, 0, 0, 0, 0];
  const push = wandDriver(() => now).openSession((one) => {
    if (one.kind !== 'item' || one.item.kind !== 'tag') return;
    readings += 1;
    if (one.item.tag !== TAG) wrong.push(Number(one.item.tag));
  });
  const reader = new LineReader((one) => {
    accounted += one.kind === 'line' ? one.text.length + 2 : one.bytes;
  });
  const from = performance.now();
  while (bytes < total) {
    const pick = random();
    const chunk = pick < 0.25 ? frame : pick < 0.75 ? torn(frame, random) : noise(random);
    if (chunk === frame) sent += 1;
    // Past the time in which the same tag counts once.
    now += 10_000;
    push(chunk);
    reader.push(chunk);
    mostHeld = Math.max(mostHeld, reader.pendingBytes);
    bytes += chunk.length;
  }
  const ms = performance.now() - from;
  const unaccounted = bytes - accounted - reader.pendingBytes;
  return { name: `wand-line, ${form}`, bytes, readings, sent, wrong, unaccounted, mostHeld, ms };
}

/** Fuzzes every decoder and the wand with so many bytes each, one after the other. */
export function* fuzzAll(bytesEach: number, seed: number): Generator<FuzzReport> {
  for (const of of FUZZED) yield fuzz(of, bytesEach, seed);
  for (const form of WAND_FORMS) yield fuzzWand(form, bytesEach, seed);
}

function torn(frame: Uint8Array, random: () => number): Uint8Array {
  const at = 1 + Math.floor(random() * (frame.length - 1));
  return random() < 0.5
    ? Uint8Array.of(...frame.subarray(0, at), TORN)
    : Uint8Array.of(TORN, ...frame.subarray(at));
}

function noise(random: () => number): Uint8Array {
  return Uint8Array.from({ length: 1 + random() * 40 }, () => between(random, 0, 256));
}

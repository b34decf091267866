import { grams, type MassUnit, massFrom } from '../../core/quantity/mass.ts';
import type { ScaleFault } from '../../core/weighing/reading.ts';
import { SummedFramer } from '../serial/summed-framer.ts';
import { type Decoded, type FrameFault, readingOf, refuse, type Seen } from './decoded.ts';
import { type ScaleProfile, STREAMED } from './profile.ts';
import { type ScaleSettings, UNIT_REQUIRED } from './settings.ts';
import type { ShownMass } from './shown-mass.ts';

/** Three status words go before six digits of weight, six of tare, and the CR. */
const WORDS = 3;
const DIGITS = /^(\d{6})\d{6}\r$/;
/** Decimals by the low three bits of the first word; below two the digits stand for tens, which is not told alike. */
const FIRST_DECIMALS = 2;
/** The step by bits 3 and 4 of the first word, in last digits; 00 is none. */
const STEPS: readonly (number | undefined)[] = [undefined, 1, 2, 5];

/**
 * Frames of 18 bytes that a scale sends without pause: three status words, weight, tare, CR and a checksum.
 *
 * Published manuals contradict each other about the bits of the unit, and reading one scale by the other's manual
 * takes kilograms for pounds. So the unit is the one set, and a frame that speaks of it in neither way is refused.
 * Source: five published manuals (facts §1.5).
 */
export function statusWords(settings: ScaleSettings): ScaleProfile {
  return {
    ...STREAMED,
    id: 'status-words',
    title: 'Continuous, 18 bytes with status words and checksum',
    width: 'fixed',
    settings: [UNIT_REQUIRED],
    needsProof: true,
    createFramer: () => new SummedFramer(),
    decode: (text, role, atMs) => decode({ text, role, atMs }, settings.unit),
  };
}

function decode(seen: Seen, unit: MassUnit | undefined): Decoded {
  const { text } = seen;
  const digits = DIGITS.exec(text.slice(WORDS))?.[1];
  if (digits === undefined) return refuse('bad-number', text);
  const [a, b, c] = [text.charCodeAt(0), text.charCodeAt(1), text.charCodeAt(2)];
  const decimals = (a & 0b111) - FIRST_DECIMALS;
  const step = STEPS[(a >> 3) & 0b11];
  if (decimals < 0 || step === undefined) return refuse('bad-header', text);
  // Bits 5 and 6 mark a status word, but for the second one, whose bit 5 manuals disagree about. Bit 4 of the third
  // shifts the decimals in a way they do not tell.
  if ((a & 0b110_0000) !== 0b10_0000) return refuse('bad-header', text);
  if ((c & 0b10_0000) === 0 || (c & 0b1_0000) !== 0) return refuse('bad-header', text);
  if (unit === undefined) return refuse('unit-not-set', text);
  const doubt = unitDoubt(unit, b, c);
  if (doubt !== null) return refuse(doubt, text);
  const negative = (b & 0b10) !== 0;
  const shown = massOf(digits, negative, unit, decimals, step);
  return readingOf(
    { shown, moving: (b & 0b1000) !== 0, net: (b & 1) !== 0, fault: faultOf(b, negative), unit: null },
    seen,
  );
}

/**
 * Whether either manual's reading of the bits agrees with the unit set.
 *
 * One: bit 4 of the second word is 1 for kg, 0 for lb, unless the low bits of the third name another (001 g). The
 * other: bit 4 is always 1, and bit 0 of the third word is 0 for kg, 1 for lb.
 */
function unitDoubt(unit: MassUnit, b: number, c: number): FrameFault | null {
  const bit4 = (b & 0b1_0000) !== 0;
  const other = c & 0b111;
  if (other > 1) return 'unknown-unit';
  const first: MassUnit = other === 1 ? 'g' : bit4 ? 'kg' : 'lb';
  const second: MassUnit | null = !bit4 ? null : other === 1 ? 'lb' : 'kg';
  return unit === first || unit === second ? null : 'unit-mismatch';
}

/** Bit 2: out of range. Bit 6: not zeroed since power-up. */
function faultOf(b: number, negative: boolean): ScaleFault | null {
  if (b & 0b100) return negative ? 'under' : 'over';
  return b & 0b100_0000 ? 'zero-error' : null;
}

function massOf(
  digits: string,
  negative: boolean,
  unit: MassUnit,
  decimals: number,
  step: number,
): ShownMass {
  const perUnit = 10 ** decimals;
  const value = massFrom(Number(digits), unit).value / perUnit;
  return {
    mass: grams(negative && value !== 0 ? -value : value),
    division: grams(massFrom(step, unit).value / perUnit),
  };
}

import { describe, expect, it } from 'vitest';
import { grams } from '../../../core/quantity/mass.ts';
import { proposalsFor } from '../../../hardware/scale/recognise.ts';
import { withEvenParity } from '../../../hardware/serial/seven-bits.ts';
import { between, seededRandom } from '../../../hardware/simulator/random.ts';
import {
  SIM_FORMATS,
  SIM_VOICES,
  type SimFormat,
  type SimVoice,
} from '../../../hardware/simulator/sim-voice.ts';
import { bytes } from '../bytes.ts';

const SHOWN = { steps: 2469, moving: false, net: false, range: 'within' } as const;
const FACE = { unit: 'kg', division: grams(50) } as const;
const STREAMS = SIM_FORMATS.filter((format) => voiceOf(format).stream !== null);

function voiceOf(format: SimFormat): SimVoice {
  return SIM_VOICES[format];
}

/** Ten lines of a format that sends by itself, with the tail of one before them and the head of one behind. */
function heardOf(format: SimFormat): Uint8Array {
  const line = voiceOf(format).stream?.(SHOWN, FACE) ?? new Uint8Array(0);
  return Buffer.concat([line.subarray(5), ...Array.from({ length: 10 }, () => line), line.subarray(0, 7)]);
}

function proposed(all: Uint8Array, asked: Uint8Array | null = null) {
  return proposalsFor([{ baud: 9600, asked, bytes: all }]);
}

describe('recognition of what was heard', () => {
  it.each(STREAMS)('proposes %s first, with a sample, and is surer of it than not', (format) => {
    const [best] = proposed(heardOf(format));
    expect(best).toMatchObject({ profileId: format, baud: 9600 });
    expect(best?.confidence).toBeGreaterThan(0.8);
    expect(best?.confidence).toBeLessThan(1);
    expect(best?.sample.length).toBeGreaterThan(5);
  });

  it.each(STREAMS)('proposes %s among noise too, and is less sure', (format) => {
    const random = seededRandom(3);
    const line = voiceOf(format).stream?.(SHOWN, FACE) ?? new Uint8Array(0);
    const noisy = Array.from({ length: 10 }, (_, at) => {
      const rubbish = Uint8Array.from({ length: between(random, 1, 7) }, () => between(random, 128, 256));
      return at % 3 === 0 ? Buffer.concat([rubbish, line]) : line;
    });
    const [best] = proposed(Buffer.concat(noisy));
    expect(best?.profileId).toBe(format);
    expect(best?.confidence).toBeLessThan(proposed(heardOf(format))[0]?.confidence ?? 0);
  });

  it('says the unit where frames name it, and leaves it open where they do not', () => {
    expect(proposed(heardOf('st-gs'))[0]?.unit).toBe('kg');
    expect(proposed(heardOf('stx-etx-short'))[0]?.unit).toBeNull();
  });

  it('lists both units where the bits of one agree with two manuals', () => {
    const line = voiceOf('status-words').stream?.(SHOWN, { ...FACE, unit: 'g', division: grams(1) });
    const found = proposed(Buffer.concat(Array.from({ length: 8 }, () => line ?? new Uint8Array(0))));
    expect(found.map(({ profileId, unit }) => [profileId, unit])).toEqual([['status-words', 'g']]);
    // With bit 4 set the same third word means grams in one manual and pounds in the other.
    const both = Buffer.from('022c303130303132333435303030303030', 'hex');
    const sum = Buffer.from('022c30213031323334353030303030300d', 'hex');
    expect(both.length).toBe(sum.length);
    const check = -sum.reduce((total, byte) => total + byte, 0) & 0x7f;
    const ambiguous = proposed(Buffer.concat(Array.from({ length: 8 }, () => Buffer.from([...sum, check]))));
    expect(ambiguous.map(({ unit }) => unit).sort()).toEqual(['g', 'lb']);
    expect(new Set(ambiguous.map(({ confidence }) => confidence)).size).toBe(1);
  });

  it('lists both polarities of the motion bit side by side', () => {
    const reply = bytes('\n0012.34kg\r\n00\r\x03');
    const found = proposed(Buffer.concat([reply, reply, reply]), bytes('W\r'));
    expect(found.map(({ profileId }) => profileId)).toEqual(['weight-status', 'weight-status-inverse']);
    expect(found[0]?.confidence).toBe(found[1]?.confidence);
  });

  it('finds a line of seven bits and parity, and says so', () => {
    const [best] = proposed(withEvenParity(heardOf('st-gs')));
    expect(best).toMatchObject({ profileId: 'st-gs', settings: { line: '7e1' }, unit: 'kg' });
  });

  it('takes a reply only as one to the question that was asked', () => {
    const reply = bytes('\n 1G         943g  \r');
    expect(proposed(reply, bytes('\nW\r')).map(({ profileId }) => profileId)).toEqual(['sma']);
    expect(proposed(reply, bytes('SI\r\n'))).toEqual([]);
  });

  it('is the surer the more frames it heard', () => {
    const line = bytes('ST,GS,+0012.34kg\r\n');
    const sure = [2, 3, 6, 12].map((count) => {
      const all = Buffer.concat(Array.from({ length: count }, () => line));
      return proposed(all)[0]?.confidence ?? 0;
    });
    expect([...sure].sort((a, b) => a - b)).toEqual(sure);
    expect(new Set(sure).size).toBe(4);
  });

  it('proposes nothing for nothing, noise, or a line of text', () => {
    const random = seededRandom(5);
    const rubbish = Uint8Array.from({ length: 20_000 }, () => between(random, 0, 256));
    expect(proposalsFor([])).toEqual([]);
    expect(proposed(new Uint8Array(0))).toEqual([]);
    expect(proposed(rubbish)).toEqual([]);
    expect(proposed(bytes('login: \r\nPassword: \r\nLast login today\r\n'))).toEqual([]);
  });

  it('does not take faults alone for a format', () => {
    expect(proposed(bytes('ST,GS\r\nOL,+999999E+19\r\nOL,+999999E+19\r\n'))).toEqual([]);
  });
});

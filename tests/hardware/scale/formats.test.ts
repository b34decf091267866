import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scaleDriver } from '../../../hardware/scale/scale-driver.ts';
import { bytes, cut, cuts, rubbish } from '../bytes.ts';
import { accountedFor, pushAll } from '../serial/framing-laws.ts';
import { expectFault, expectReading, onlyText } from './expect-decoded.ts';
import { FORMAT_CASES } from './format-cases.ts';

/** One case of each profile is enough where layouts share a decoder. */
const BY_ID = FORMAT_CASES.filter((one, at, all) => all.findIndex((other) => other.id === one.id) === at);

describe.each(BY_ID)('the format $id', ({ make, frames, broken }) => {
  it.each(frames)('reads $wire ($source)', ({ wire, reading, settings = {} }) => {
    const profile = make(settings);
    expectReading(profile.decode(onlyText(profile, wire), 'bench', 1234), 'bench', 1234, reading);
  });

  it.each(broken)('refuses $wire as $fault ($source)', ({ wire, fault, settings = {} }) => {
    expectFault(make(settings), wire, fault, 'bench');
  });

  it('frames the same however the bytes were cut, and accounts for every byte', () => {
    const stream = fc
      .array(fc.oneof(rubbish(40), fc.constantFrom(...frames.map((frame) => bytes(frame.wire)))), {
        maxLength: 12,
      })
      .map((parts) => Uint8Array.from(parts.flatMap((part) => [...part])));
    fc.assert(
      fc.property(stream, cuts, (whole, places) => {
        const framer = make().createFramer();
        const framed = pushAll(framer, cut(whole, places));
        expect(framed).toEqual(make().createFramer().push(whole));
        expect(accountedFor(framed) + framer.pendingBytes).toBe(whole.length);
      }),
      { numRuns: 400 },
    );
  });

  it('reads the second whole frame after any noise', () => {
    const { wire } = frames[0] ?? { wire: '' };
    const text = onlyText(make(), wire);
    fc.assert(
      fc.property(rubbish(200), (whole) => {
        const framer = make().createFramer();
        framer.push(whole);
        framer.push(bytes(wire));
        expect(framer.push(bytes(wire)).at(-1)).toEqual({ kind: 'line', text });
      }),
      { numRuns: 400 },
    );
  });

  it('never throws, and gives no number that is not finite, whatever the text', () => {
    const texts = frames.map((frame) => onlyText(make(), frame.wire));
    // A good text with a few characters replaced comes nearer to the edge than any text made up.
    const nearly = fc
      .tuple(
        fc.constantFrom(...texts),
        fc.array(fc.tuple(fc.nat(24), fc.string({ minLength: 0, maxLength: 2 })), { maxLength: 3 }),
      )
      .map(([text, edits]) =>
        edits.reduce((now, [at, by]) => now.slice(0, at) + by + now.slice(at + by.length), text),
      );
    const profiles = [make(), make({ unit: 'kg', noTare: true }), make({ unit: 'lb' })];
    fc.assert(
      fc.property(fc.oneof(nearly, fc.string()), fc.constantFrom(...profiles), (text, profile) => {
        for (const role of ['bench', 'platform'] as const) {
          const decoded = profile.decode(text, role, 0);
          if (decoded.kind !== 'reading') continue;
          expect(Number.isFinite(decoded.reading.mass.value)).toBe(true);
          expect(decoded.reading.division.value).toBeGreaterThan(0);
          if (decoded.reading.fault !== undefined) expect(decoded.reading.mass.value).toBe(0);
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('refuses a bare unit or an empty text rather than take it for zero', () => {
    for (const text of ['', ' ', 'kg', '?', '0', 'S', '.']) {
      expect(make({ unit: 'kg' }).decode(text, 'bench', 0).kind).toBe('fault');
    }
  });

  it('starts afresh with each session: nothing of the one before is joined on', () => {
    const frame = frames[0];
    const whole = bytes(frame?.wire ?? '');
    const driver = scaleDriver(make(frame?.settings), 'bench', () => 0);
    const items: unknown[] = [];
    const session = () => driver.openSession((one) => one.kind === 'item' && items.push(one.item));
    session()(whole.subarray(0, 8));
    session()(whole.subarray(8));
    expect(items).toEqual([]);
  });
});

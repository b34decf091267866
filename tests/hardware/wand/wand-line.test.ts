import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TagMarks } from '../../../core/herd/tag.ts';
import { encodeWandLine } from '../../../hardware/simulator/encode-wand.ts';
import { readWandLine } from '../../../hardware/wand/wand-line.ts';
import { WAND_FRAMES } from '../../oracles/serial-frames-wand.ts';

const UNTOLD: TagMarks = { animal: null, retag: null, userInfo: null, extraBlock: null };

describe('a line of the wand', () => {
  it.each(WAND_FRAMES)(
    '$text is the tag $tag with the marks $marks, or is refused as $why ($source)',
    ({ text, tag, marks, why }) => {
      const line = readWandLine(text);
      if (tag !== undefined) expect(line).toEqual({ kind: 'tag', tag, marks: { ...UNTOLD, ...marks } });
      else expect(line).toEqual({ kind: 'refused', why, text });
    },
  );

  it('gives the same number in every form it can be written in', () => {
    const country = fc.integer({ min: 1, max: 998 }).map((code) => String(code).padStart(3, '0'));
    const national = fc
      .integer({ min: 0, max: 274_877_906_943 })
      .map((code) => String(code).padStart(12, '0'));
    fc.assert(
      fc.property(country, national, (c, n) => {
        const forms = [
          `${c}${n}`,
          `${c} ${n}`,
          `A0000000${c}${n}`,
          `A 00000 0 ${c} ${n}`,
          `A 00000 0 0${c} ${n}`,
          `LA ${c} ${n}`,
          `LA 00000 0 ${c} ${n}`,
          `${c}${n} 0 00 000`,
        ];
        for (const form of forms) expect(readWandLine(form)).toMatchObject({ kind: 'tag', tag: `${c}${n}` });
      }),
    );
  });

  it('gives back what a transponder holds, in every form that has room for it', () => {
    const code = fc.record({
      tag: fc
        .tuple(fc.integer({ min: 1, max: 998 }), fc.integer({ min: 0, max: 274_877_906_943 }))
        .map(([c, n]) => `${String(c).padStart(3, '0')}${String(n).padStart(12, '0')}`),
      animal: fc.boolean(),
      reserved: fc.integer({ min: 0, max: 16_383 }),
      extraBlock: fc.boolean(),
      extra: fc.constant(0),
    });
    fc.assert(
      fc.property(code, (of) => {
        const marks = {
          retag: of.reserved >> 11,
          userInfo: (of.reserved >> 6) & 31,
          extraBlock: of.extraBlock,
        };
        expect(readWandLine(encodeWandLine(of, 'long'))).toEqual({
          kind: 'tag',
          tag: of.tag,
          marks: { ...marks, animal: of.animal },
        });
        expect(readWandLine(encodeWandLine(of, 'full'))).toMatchObject({ tag: of.tag, marks });
        expect(readWandLine(encodeWandLine(of, 'digits'))).toEqual({
          kind: 'tag',
          tag: of.tag,
          marks: UNTOLD,
        });
      }),
    );
  });

  it('never throws, and never gives a tag that is not 15 digits long', () => {
    const nearly = fc.stringMatching(/^(LA|A|R|LR)? ?[0-9 ]{10,28}$/);
    fc.assert(
      fc.property(fc.oneof(fc.string(), nearly), (text) => {
        const line = readWandLine(text);
        if (line.kind === 'tag') expect(line.tag).toMatch(/^\d{15}$/);
        else expect(line.why.length).toBeGreaterThan(0);
      }),
      { numRuns: 1000 },
    );
  });
});

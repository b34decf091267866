import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readWandLine } from '../../../hardware/wand/wand-line.ts';
import { WAND_FRAMES } from '../../oracles/serial-frames.ts';

describe('a line of the wand', () => {
  it.each(WAND_FRAMES)('$text is the tag $tag, or is refused as $why ($source)', ({ text, tag, why }) => {
    const line = readWandLine(text);
    if (tag !== undefined) expect(line).toEqual({ kind: 'tag', tag });
    else expect(line).toEqual({ kind: 'refused', why, text });
  });

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
        ];
        for (const form of forms) expect(readWandLine(form)).toEqual({ kind: 'tag', tag: `${c}${n}` });
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

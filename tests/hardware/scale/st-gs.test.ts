import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ST_GS } from '../../../hardware/scale/st-gs.ts';

describe('continuous lines', () => {
  it('reads a weight of any of the four units as exact grams', () => {
    const grams = ['kg', 'g', 'lb', 'oz'].map((unit) => {
      const decoded = ST_GS.decode(`ST,GS,+  1.005${unit}`, 'platform', 0);
      return decoded.kind === 'reading' ? decoded.reading.mass.value : null;
    });
    expect(grams).toEqual([1005, 1.005, (1005 * 453.59237) / 1000, (1005 * 28.349523125) / 1000]);
  });

  it('drops the first line of a connection, which may be the tail of one', () => {
    const framer = ST_GS.createFramer();
    const framed = framer.push(Buffer.from('012.34kg\r\nST,GS,+0012.34kg\r\n'));
    expect(framed.map((one) => one.kind)).toEqual(['discarded', 'line']);
  });

  it('never throws and never gives a number that is not finite, whatever the text', () => {
    const nearly = fc.stringMatching(/^(ST|US|OL),(GS|NT)[,+ -]{1,2}[ 0-9.eE+-]{0,14}[,]?(kg|g|lb)?$/);
    fc.assert(
      fc.property(fc.oneof(nearly, fc.string()), (text) => {
        const decoded = ST_GS.decode(text, 'platform', 0);
        if (decoded.kind !== 'reading') return;
        expect(Number.isFinite(decoded.reading.mass.value)).toBe(true);
        expect(decoded.reading.division.value).toBeGreaterThan(0);
      }),
      { numRuns: 2000 },
    );
  });
});

import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { csvRecord } from '../../../core/exports/csv.ts';
import { textCell } from '../../../core/herd-file/text.ts';

describe('a record', () => {
  test.each([
    [['a', 'b'], 'a,b\r\n'],
    [['a "b"', 'c,d', 'e\nf'], '"a ""b""","c,d","e\nf"\r\n'],
    [[null, 0, -3.5, ' x'], ',0,-3.5," x"\r\n'],
    [['🐐', 'Žofie'], '🐐,Žofie\r\n'],
  ])('%j', (cells, written) => {
    expect(csvRecord(cells)).toBe(written);
  });

  test.each(['=1+1', '+1', '-1', '@A1', '\tx', '\rx', '＝1', '=HYPERLINK("http://x")'])(
    'takes the sting out of %j',
    (formula) => {
      const [[cell = ''] = []] = parse(csvRecord([formula]), {}) as string[][];
      expect(cell).toBe(`'${formula}`);
    },
  );

  test('refuses what is no number', () => {
    expect(() => csvRecord([Number.NaN])).toThrow(RangeError);
  });

  test('is read back by another program as it was, but for the apostrophe', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'grapheme' }), { minLength: 2, maxLength: 6 }), (cells) => {
        const [read = []] = parse(csvRecord(cells), { relax_column_count: true }) as string[][];
        expect(read.map((cell, i) => (cell === `'${cells[i]}` ? cells[i] : cell))).toEqual(cells);
        expect(read.some((cell) => /^[=+\-@\t\r]/.test(cell))).toBe(false);
      }),
    );
  });

  test('a name like a formula comes home as it left', () => {
    const [[cell = ''] = []] = parse(csvRecord(['=Anna']), {}) as string[][];
    expect(textCell(cell, 40)).toEqual({ ok: true, text: '=Anna' });
  });
});

import { describe, expect, test } from 'vitest';
import { previewHerd } from '../../../core/herd-file/preview.ts';
import { readTable } from '../../../server/table-file/read-file.ts';

function bytesOf(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

function rowsOf(text: string) {
  const read = readTable(bytesOf(text));
  if (!read.ok) throw new Error(read.why);
  return read.rows;
}

describe('a herd file', () => {
  test.each([
    ['commas', 'name,class\r\nAnna,doe\r\n'],
    ['semicolons', 'name;class\nAnna;doe\n'],
    ['tabs, and no line end at the end', 'name\tclass\nAnna\tdoe'],
    ['a byte order mark', '\uFEFFname,class\nAnna,doe\n'],
    ['quotes', '"name","class"\n"Anna","doe"\n'],
  ])('with %s is taken apart', (_name, text) => {
    expect(rowsOf(text)).toEqual([
      { line: 1, cells: ['name', 'class'] },
      { line: 2, cells: ['Anna', 'doe'] },
    ]);
  });

  test('keeps a decimal comma between semicolons', () => {
    expect(rowsOf('name;weight kg\nAnna;41,5\n')[1]?.cells).toEqual(['Anna', '41,5']);
  });

  test('tells the line each row begins on, past cells with line ends', () => {
    const rows = rowsOf('name,pen\nA,"x\ny\nz"\nB,1\nC\nD,1,2\n');
    expect(rows.map(({ line }) => line)).toEqual([1, 2, 5, 6, 7]);
    expect(rows[3]?.cells).toEqual(['C']);
  });

  test('in another encoding is refused rather than misread', () => {
    expect(readTable(Uint8Array.from([0x6e, 0x61, 0x6d, 0x65, 0x0a, 0xe4]))).toMatchObject({
      why: 'not-utf8',
    });
  });

  test('with a quote never closed is refused', () => {
    expect(readTable(bytesOf('name\n"Anna\n'))).toMatchObject({ ok: false, why: 'broken-quotes' });
  });

  test('of nothing has no rows', () => {
    expect(rowsOf('')).toEqual([]);
  });

  test('with a cell of 10 MB is read, and that cell refused in the preview', () => {
    const rows = rowsOf(`name,class\n${'x'.repeat(10_000_000)},doe\nAnna,doe\n`);
    const found = previewHerd(rows, { dateOrder: null, species: 'goat', wallMs: 0, herd: [] });
    expect(found).toMatchObject({ ok: true, good: [{ line: 3 }], faults: [{ line: 2, why: 'too-long' }] });
  });
});

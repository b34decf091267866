import { expect, test } from 'vitest';
import { entryShown, sheetName, sheetsFor, withLetter } from '../../kiosk/parts/letter-entry.ts';

const spell = (text: string, how: 'name' | 'code', longest = 40): string =>
  [...text].reduce((entry, letter) => withLetter(entry, letter, how, longest), '');

test.each([
  ['DR YARROW', 'name', 'Dr Yarrow'],
  ['DR. O’ROWAN-TEASEL', 'name', 'Dr. O’Rowan-Teasel'],
  ['  DR  Y', 'name', 'Dr Y'],
  ['LOT 4B/27', 'code', 'LOT 4B/27'],
] as const)('%s as a %s is written %s', (taps, how, written) => {
  expect(spell(taps, how)).toBe(written);
});

test('an entry grows no longer than it may', () => {
  expect(spell('ABCDEF', 'code', 4)).toBe('ABCD');
});

test.each([
  ['name', ['A–J', 'K–T', 'U–Z', '1–0'], '-.’ '],
  ['code', ['1–0', 'A–J', 'K–T', 'U–Z'], '-./ '],
] as const)('the tiles of a %s come in sheets of ten, what is tapped first before', (how, names, marks) => {
  const sheets = sheetsFor(how, '’');
  expect(sheets.map(sheetName)).toEqual(names);
  expect(sheets.every((sheet) => sheet.length === 10)).toBe(true);
  for (const letter of `ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789${marks}`)
    expect(sheets.join('')).toContain(letter);
});

test('the sign beside the letters is that of the language', () => {
  const letters = sheetsFor('name', 'Ñ').join('');
  expect(letters).toContain('Ñ');
  expect(letters).not.toContain('’');
  expect(spell('NIÑO', 'name', 12)).toBe('Niño');
});

test('of a long entry the end is shown, where the taps arrive', () => {
  expect(entryShown('Dr Yarrow')).toBe('Dr Yarrow');
  expect(entryShown('Practice of the upper valley')).toBe('… the upper valley');
});

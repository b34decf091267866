/** A cell of an export: text, a number, or nothing. */
export type Cell = string | number | null;

/** What spreadsheets take for the beginning of a formula, and an apostrophe before it, which our own writing adds. */
const FORMULA = /^'*[=+\-@\t\r\n＝＋－＠]/u;
const NEEDS_QUOTES = /[",\r\n]|^\s|\s$/;

/**
 * One record of a CSV file by RFC 4180, with its line end.
 *
 * Text that a spreadsheet would run as a formula gets an apostrophe in front, which the herd file's reading takes off
 * again. Numbers stay numbers: -3.5 is no formula. Throws `RangeError` for a number that is not finite.
 */
export function csvRecord(cells: readonly Cell[]): string {
  return `${cells.map(cellText).join(',')}\r\n`;
}

function cellText(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') {
    if (!Number.isFinite(cell)) throw new RangeError(`${cell} cannot stand in a file`);
    return String(cell);
  }
  const text = FORMULA.test(cell) ? `'${cell}` : cell;
  return NEEDS_QUOTES.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

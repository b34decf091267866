/** How letters are written: a name's words begin with a capital, a code such as a lot number is all capitals. */
export type LetterCase = 'name' | 'code';

/** Ten tiles at a time, so that each is as large as a gloved finger. */
const SHEETS = ['1234567890', 'ABCDEFGHIJ', 'KLMNOPQRST'] as const;
const LAST_LETTERS = 'UVWXYZ-.';

/** The sheets of tiles, the letters of a name before its digits; `ownSign` is what names of the language need beside them. */
export function sheetsFor(how: LetterCase, ownSign: string): readonly string[] {
  const [digits, ...letters] = SHEETS;
  return how === 'code'
    ? [...SHEETS, `${LAST_LETTERS}/ `]
    : [...letters, `${LAST_LETTERS}${ownSign} `, digits];
}

/** What the way to a sheet says, such as "U–Z". */
export function sheetName(sheet: string): string {
  const plain = sheet.replace(/[^A-Z0-9]/g, '');
  return `${plain[0]}–${plain.at(-1)}`;
}

/** An entry with one more letter; a full one stays as it is, and no space stands first or beside another. */
export function withLetter(entry: string, letter: string, how: LetterCase, longest: number): string {
  if (entry.length >= longest || (letter === ' ' && /(^| )$/.test(entry))) return entry;
  const begins = entry === '' || /[ \-.’/]$/.test(entry);
  return entry + (how === 'code' || begins ? letter : letter.toLowerCase());
}

/** How much of a long entry is shown: its end, where the taps arrive. */
const SHOWN = 18;

/** An entry as it is shown while it is spelled. */
export function entryShown(entry: string): string {
  return entry.length > SHOWN ? `…${entry.slice(1 - SHOWN)}` : entry;
}

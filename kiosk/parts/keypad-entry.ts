/** The longest number the keypad takes, in digits. */
export const LONGEST_NUMBER = 8;

/** An entry with one more digit; a full one stays as it is. */
export function withDigit(entry: string, digit: string): string {
  return entry.length >= LONGEST_NUMBER ? entry : entry + digit;
}

/** An entry with a decimal point, unless it has one; one that begins with it gets a zero before. */
export function withPoint(entry: string): string {
  if (entry.includes('.') || entry.length >= LONGEST_NUMBER) return entry;
  return entry === '' ? '0.' : `${entry}.`;
}

/** An entry with its last digit gone. */
export function withoutLast(entry: string): string {
  return entry.slice(0, -1);
}

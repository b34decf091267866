import type { SpokenTime } from './spoken-day.ts';
import { spokenNumber } from './spoken-number.ts';
import { spokenAmount } from './spoken-quantity.ts';

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];
const MONTHS = [
  ...['January', 'February', 'March', 'April', 'May', 'June', 'July'],
  ...['August', 'September', 'October', 'November', 'December'],
];
const TO_TWENTIETH = (
  'first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth ' +
  'fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth'
).split(' ');

/** A day of the month: "first" to "thirty first". */
export function ordinalEn(day: number): string {
  if (day === 30) return 'thirtieth';
  const tens = { 2: 'twenty ', 3: 'thirty ' }[Math.floor(day / 10)];
  return day <= 20 ? (TO_TWENTIETH[day - 1] as string) : `${tens}${TO_TWENTIETH[(day % 10) - 1]}`;
}

/** A day with its part: "Friday evening", "noon tomorrow", "the fourth of May, morning". */
export function spokenDay({ day, part }: SpokenTime): string {
  switch (day.kind) {
    case 'today':
      return { morning: 'this morning', noon: 'noon today', evening: 'this evening' }[part];
    case 'tomorrow':
      return part === 'noon' ? 'noon tomorrow' : `tomorrow ${part}`;
    case 'weekday':
      return part === 'noon' ? `noon on ${WEEKDAYS[day.weekday]}` : `${WEEKDAYS[day.weekday]} ${part}`;
    case 'date':
      return `the ${ordinalEn(day.day)} of ${MONTHS[day.month - 1]}, ${part}`;
  }
}

/** How to draw a dose in several fillings: "two draws of one point six five". */
export function spokenDraws(marks: readonly string[]): string {
  const kinds = [...new Set(marks)];
  const [first] = kinds;
  const draws = spokenNumber(String(marks.length), 'en');
  if (kinds.length === 1 && first !== undefined) return `${draws} draws of ${spokenAmount(first, 'en')}`;
  const each = kinds.map((mark) => {
    const count = marks.filter((other) => other === mark).length;
    return `${spokenNumber(String(count), 'en')} of ${spokenAmount(mark, 'en')}`;
  });
  return `${draws} draws, ${each.join(', ')}`;
}

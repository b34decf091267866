import type { SpokenTime } from './spoken-day.ts';
import { spokenNumber } from './spoken-number.ts';
import { spokenAmount } from './spoken-quantity.ts';

const WEEKDAYS = ['domingo', 'lunes', 'martes', 'miércoles', 'jueves', 'viernes', 'sábado'];
const MONTHS = [
  ...['enero', 'febrero', 'marzo', 'abril', 'mayo', 'junio', 'julio'],
  ...['agosto', 'septiembre', 'octubre', 'noviembre', 'diciembre'],
];
/** Evening is "noche": "tarde" may mean any hour after noon, and would be too early. */
const PARTS = { morning: 'por la mañana', noon: 'al mediodía', evening: 'por la noche' } as const;

/** Until when, after "antes": "del viernes por la noche", "de mañana al mediodía", "del uno de mayo por la mañana". */
export function antesDe({ day, part }: SpokenTime): string {
  switch (day.kind) {
    case 'today':
      return { morning: 'de esta mañana', noon: 'de hoy al mediodía', evening: 'de esta noche' }[part];
    case 'tomorrow':
      return `de mañana ${PARTS[part]}`;
    case 'weekday':
      return `del ${WEEKDAYS[day.weekday]} ${PARTS[part]}`;
    case 'date':
      return `del ${spokenNumber(String(day.day), 'es')} de ${MONTHS[day.month - 1]} ${PARTS[part]}`;
  }
}

/** How to draw a dose in several fillings: "dos cargas de uno punto seis cinco". */
export function cargas(marks: readonly string[]): string {
  const kinds = [...new Set(marks)];
  const [first] = kinds;
  const draws = spokenNumber(String(marks.length), 'es', 'feminine');
  if (kinds.length === 1 && first !== undefined) return `${draws} cargas de ${spokenAmount(first, 'es')}`;
  const each = kinds.map((mark) => {
    const count = marks.filter((other) => other === mark).length;
    return `${spokenNumber(String(count), 'es', 'feminine')} de ${spokenAmount(mark, 'es')}`;
  });
  return `${draws} cargas, ${each.join(', ')}`;
}

import type { Species } from '../../core/herd/animal.ts';
import type { Medicine } from '../../core/medicine/medicine.ts';
import type { ScreenLanguage } from '../../shared/language.ts';

const EN = {
  locale: 'en-GB',
  jug: (number: number) => `Jug ${number}`,
  jugId: (id: string) => `Jug id ${id}`,
  mixed: (when: string, by: string) => `Mixed ${when} by ${by}`,
  undated: 'The clock was not set when it was mixed: go by the day written on the jug.',
  useBy: (when: string) => `Use by ${when}`,
  made: (volume: string) => `${volume} made`,
  poured: 'POURED AWAY: this label is of a jug that is no more.',
  conflict: (days: number) =>
    `No organophosphate within ${days} days of it, before or after: no dip, pour-on or collar of that kind`,
  agitate: { swirl: 'Swirl before each draw', shake: 'Shake before each draw' } satisfies Record<
    Medicine['agitate']['how'],
    string
  >,
  species: { goat: 'Goats', sheep: 'Sheep', cattle: 'Cattle' } satisfies Record<Species, string>,
  tableTitle: (species: string, rate: string, purpose: string | null) =>
    purpose === null ? `${species}: ${rate}` : `${species}, ${purpose}: ${rate}`,
  never: (rate: string) => `never above ${rate}`,
  approved: (by: string, direction: string) => `approved by ${by}, ${direction}`,
  direction: { label: 'on the label', veterinarian: 'on the veterinarian’s word' },
  weight: 'Weight',
  draw: 'Draw',
  syringe: 'Syringe',
  noSyringe: 'no syringe here',
  howToRead: [
    'Weigh the animal: a guess is no weight. Take the row nearest its weight; of two as near, the lighter.',
    'Lighter than the first row or heavier than the last: do not dose by this table.',
    'Ask first: dosed before? in milk? bred not long ago? sick or weak? Never twice in 24 hours.',
    'Write down who got what and when, and enter it when the kiosk runs again.',
  ],
  meat: (when: string) => `Meat: ${when}`,
  milk: (when: string) => `Milk: ${when}`,
  hours: (hours: string) => `kept back ${hours} hours`,
  days: (days: string) => `kept back ${days} days`,
  notForPeople: 'not for people',
  notKnown: 'no time known, ask the vet: not for people until then',
  noRule:
    'No dose rule of this medicine is approved here, so there is no table. Approve one at Shed, then print again.',
  safety: [
    'Doses come from published rules or from what your veterinarian directed. Use outside the label needs a veterinarian.',
    'Local law and the label in hand win. The kiosk is not a vet.',
  ],
  print: 'Print',
  back: 'Back',
  paper: { a6: 'A6 card', roll: '62 mm roll' },
  noJug: 'No such jug',
  noJugDetail: 'The kiosk knows no jug of this id. Go back and open the jug from the list.',
};

/** What stands on every label and table. */
export type PrintWords = typeof EN;

const ES: PrintWords = {
  locale: 'es-419',
  jug: (number) => `Jarra ${number}`,
  jugId: (id) => `Id de la jarra ${id}`,
  mixed: (when, by) => `Mezclada ${when} por ${by}`,
  undated: 'El reloj no estaba puesto cuando se mezcló: guíese por el día escrito en la jarra.',
  useBy: (when) => `Sirve hasta ${when}`,
  made: (volume) => `Se hicieron ${volume}`,
  poured: 'SE TIRÓ: esta etiqueta es de una jarra que ya no existe.',
  conflict: (days) =>
    `Ningún organofosforado en los ${days} días antes o después: ni baño, ni vertido al lomo, ni collar de esa clase`,
  agitate: { swirl: 'Revuelva antes de cargar cada vez', shake: 'Agite antes de cargar cada vez' },
  species: { goat: 'Cabras', sheep: 'Ovejas', cattle: 'Vacunos' },
  tableTitle: (species, rate, purpose) =>
    purpose === null ? `${species}: ${rate}` : `${species}, ${purpose}: ${rate}`,
  never: (rate) => `nunca más de ${rate}`,
  approved: (by, direction) => `aprobó ${by}, ${direction}`,
  direction: { label: 'según la etiqueta', veterinarian: 'por orden del veterinario' },
  weight: 'Peso',
  draw: 'Cargue',
  syringe: 'Jeringa',
  noSyringe: 'aquí no hay jeringa',
  howToRead: [
    'Pese al animal: un cálculo a ojo no es un peso. Tome la fila más cercana a su peso; entre dos igual de cerca, la más liviana.',
    'Más liviano que la primera fila o más pesado que la última: no dosifique con esta tabla.',
    'Pregunte antes: ¿ya recibió dosis? ¿da leche? ¿la cubrieron hace poco? ¿está enfermo o débil? Nunca dos veces en 24 horas.',
    'Escriba quién recibió qué y cuándo, y regístrelo cuando el quiosco vuelva a andar.',
  ],
  meat: (when) => `Carne: ${when}`,
  milk: (when) => `Leche: ${when}`,
  hours: (hours) => `retenida ${hours} horas`,
  days: (days) => `retenida ${days} días`,
  notForPeople: 'no es para personas',
  notKnown: 'plazo no conocido, pregunte al veterinario: hasta entonces no es para personas',
  noRule:
    'Aquí no hay regla de dosis aprobada de este medicamento, así que no hay tabla. Apruebe una en Cobertizo e imprima otra vez.',
  safety: [
    'Las dosis vienen de reglas publicadas o de lo que ordenó su veterinario. Usarlo fuera de la etiqueta exige un veterinario.',
    'La ley del lugar y la etiqueta en la mano mandan. El quiosco no es veterinario.',
  ],
  print: 'Imprimir',
  back: 'Atrás',
  paper: { a6: 'Tarjeta A6', roll: 'Rollo de 62 mm' },
  noJug: 'No existe esa jarra',
  noJugDetail: 'El quiosco no conoce ninguna jarra con este id. Vuelva y abra la jarra desde la lista.',
};

/** The words of a label or table, by the language of the screen. */
export const PRINT_WORDS: Readonly<Record<ScreenLanguage, PrintWords>> = { en: EN, es: ES };

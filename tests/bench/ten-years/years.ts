import { DAY_MS, HOUR_MS } from '../../../core/moment.ts';
import type { Correction, Treatment } from '../../../core/round/treatment.ts';
import type { Untreated } from '../../../server/store/untreated.ts';
import { given } from '../../server/make/book.ts';

/** Ten years of a large herd. */
export const TEN_YEARS = { animals: 500, treatments: 1_000_000, weighings: 10_000_000 } as const;
/** When the ten years end. */
export const END_MS = Date.UTC(2037, 0, 1, 8);
/** How long they are. */
export const YEARS_MS = 3652 * DAY_MS;
const PEOPLE = ['Wren', 'Finch', 'Rook', 'Lark'];
const MEDICINES = ['levamisole', 'fenbendazole', 'albendazole', 'ivermectin', 'moxidectin', 'thiamine'];
/** Doses a jug is good for. */
export const A_JUG_LASTS = 100;
const SOURCE = 'an invented farm';

/** The id of an animal of the bench. */
export function animalId(i: number): string {
  return `01900000-0000-7000-8000-${String(i).padStart(12, '0')}`;
}

/** The id of a jug of the bench. */
export function jugId(i: number): string {
  return `01930000-0000-7000-8000-${String(i).padStart(12, '0')}`;
}

/** What stands in a jug of the bench. */
export function medicineOf(jug: number): string {
  return MEDICINES[jug % MEDICINES.length] ?? '';
}

/** When a treatment of the ten years was given, milliseconds since 1970. */
export function givenAt(i: number): number {
  return Math.round(END_MS - YEARS_MS + (i * YEARS_MS) / TEN_YEARS.treatments);
}

/** Who gave a treatment of the ten years. */
export function givenBy(i: number): string {
  return PEOPLE[i % PEOPLE.length] ?? '';
}

/** The number, from 0, of the animal that got a treatment of the ten years. */
function animalOf(i: number): number {
  return (i * 7919) % TEN_YEARS.animals;
}

/**
 * One treatment of the ten years; its animal, medicine, person and what became of it are spread evenly.
 *
 * One animal in twenty has no time for its milk at every other dose, one in a hundred was dosed under a clock nobody
 * trusted at every other dose: the same animals all along, so that any stretch of the years holds the same of each.
 */
export function treatmentOf(i: number): Treatment {
  const atMs = givenAt(i);
  const jug = Math.floor(i / A_JUG_LASTS);
  const turn = i % TEN_YEARS.animals;
  const everyOther = Math.floor(i / TEN_YEARS.animals) % 2 === 0;
  const unknown = everyOther && turn % 20 === 7;
  const days = { kind: 'days', days: 3 + (i % 12), evidence: 'primary', source: SOURCE } as const;
  const clear = { kind: 'at', atMs: atMs + days.days * DAY_MS } as const;
  return given({
    id: treatmentId(i),
    animal: animalId(animalOf(i)),
    jug: jugId(jug),
    medicine: medicineOf(jug),
    atMs,
    trusted: !(everyOther && turn % 100 === 13),
    by: givenBy(i),
    kg: 30 + (i % 40),
    volumeMl: 5 + (i % 90) / 10,
    meat: days,
    milk: unknown ? { kind: 'unknown', source: SOURCE } : days,
    clear: { meat: clear, milk: unknown ? { kind: 'unknown' } : clear },
  });
}

/** The correction of a treatment; every hundredth has one. */
export function correctionOf(i: number): Correction | null {
  if (i % 100 !== 42) return null;
  const kinds = [
    { kind: 'not-given' },
    { kind: 'wrong-animal', animalId: animalId((i + 1) % TEN_YEARS.animals) },
    { kind: 'wrong-volume', volumeMl: 4 },
    { kind: 'vet-time', meat: { unit: 'days', count: 9 }, milk: { unit: 'hours', count: 96 } },
  ] as const;
  const what = kinds[Math.floor(i / 100) % kinds.length] ?? kinds[0];
  return { id: `correction ${i}`, treatmentId: treatmentId(i), what, atMs: givenAt(i) + HOUR_MS, by: 'Wren' };
}

/** The visit without a dose that came after a treatment; one comes after every twentieth. */
export function untreatedAfter(i: number): Untreated | null {
  if (i % 20 !== 3) return null;
  return {
    id: `01920000-0000-7000-8000-${String(i).padStart(12, '0')}`,
    kind: i % 40 === 3 ? 'skipped' : 'lapsed',
    animalId: animalId(animalOf(i)),
    offerId: null,
    reason: 'later',
    weightGrams: 41_000,
    atMs: givenAt(i),
    by: givenBy(i),
    clockTrusted: true,
  };
}

function treatmentId(i: number): string {
  return `01910000-0000-7000-8000-${String(i).padStart(12, '0')}`;
}

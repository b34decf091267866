import { statSync } from 'node:fs';
import { newcomer } from '../../../core/herd/herd-animal.ts';
import { DAY_MS, HOUR_MS } from '../../../core/moment.ts';
import { grams } from '../../../core/quantity/mass.ts';
import type { Correction } from '../../../core/round/treatment.ts';
import { createStore, type Store } from '../../../server/store/store.ts';
import { makeAnimal } from '../../core/make/animal.ts';
import { makeJug } from '../../core/make/jug.ts';
import { given } from '../../server/make/book.ts';

/** Ten years of a large herd. */
export const TEN_YEARS = { animals: 500, treatments: 1_000_000, weighings: 10_000_000 } as const;
/** When the ten years end. */
export const END_MS = Date.UTC(2037, 0, 1, 8);
const YEARS_MS = 3652 * DAY_MS;
const PEOPLE = ['Wren', 'Finch', 'Rook', 'Lark'];
const MEDICINES = ['levamisole', 'fenbendazole', 'albendazole', 'ivermectin', 'moxidectin', 'thiamine'];
const A_JUG_LASTS = 100;
/** Rows a transaction. */
const BATCH = 20_000;
const SOURCE = 'an invented farm';

/** What a share of ten years came to on disk. */
export interface Built {
  readonly treatments: number;
  readonly weighings: number;
  readonly bytes: number;
  readonly bytesATreatment: number;
  readonly bytesAWeighing: number;
  readonly seconds: number;
}

/** The id of an animal of the bench. */
export function animalId(i: number): string {
  return `01900000-0000-7000-8000-${String(i).padStart(12, '0')}`;
}

/** Writes a share of ten years to a file that is not there yet, through the stores that the kiosk writes with. */
export function buildYears(path: string, share: number): Built {
  const began = performance.now();
  const store = createStore(path);
  const [treatments, weighings] = [TEN_YEARS.treatments * share, TEN_YEARS.weighings * share];
  store.whole(() => {
    for (let i = 0; i < TEN_YEARS.animals; i += 1) {
      const animal = makeAnimal({
        id: animalId(i),
        name: `G ${i}`,
        tag: `840003${String(i).padStart(9, '0')}`,
        lastWeight: null,
      });
      store.animals.add(newcomer(animal), 'Wren');
    }
  });
  const empty = sizeOf(store, path);
  inBatches(store, treatments, (i) => treat(store, i, treatments));
  const treated = sizeOf(store, path);
  inBatches(store, weighings, (i) => weigh(store, i, weighings));
  const bytes = sizeOf(store, path);
  store.close();
  return {
    treatments,
    weighings,
    bytes,
    bytesATreatment: (treated - empty) / treatments,
    bytesAWeighing: (bytes - treated) / weighings,
    seconds: (performance.now() - began) / 1000,
  };
}

function inBatches(store: Store, count: number, write: (i: number) => void): void {
  for (let from = 0; from < count; from += BATCH) {
    store.whole(() => {
      for (let i = from; i < Math.min(from + BATCH, count); i += 1) write(i);
    });
  }
}

/** One treatment of the years, its animal, medicine, person and what became of it all spread evenly. */
function treat(store: Store, i: number, of: number): void {
  const atMs = Math.round(END_MS - YEARS_MS + (i * YEARS_MS) / of);
  const jug = Math.floor(i / A_JUG_LASTS);
  const medicine = MEDICINES[jug % MEDICINES.length] ?? '';
  if (i % A_JUG_LASTS === 0) {
    const mixed = { mixedAtMs: atMs - HOUR_MS, useByMs: atMs + 11 * HOUR_MS };
    store.jugs.add(makeJug({ id: jugId(jug), number: jug + 1, medicineId: medicine, ...mixed }));
    if (jug > 0) store.jugs.discard(jugId(jug - 1), atMs);
  }
  const animal = animalId((i * 7919) % TEN_YEARS.animals);
  const days = { kind: 'days', days: 3 + (i % 12), evidence: 'primary', source: SOURCE } as const;
  // One dose in a thousand was given under a clock nobody trusted, one in two hundred has no time for its milk.
  const unknown = i % 200 === 7;
  const clear = { kind: 'at', atMs: atMs + days.days * DAY_MS } as const;
  store.dayBook.addTreatment(
    given({
      id: `01910000-0000-7000-8000-${String(i).padStart(12, '0')}`,
      animal,
      jug: jugId(jug),
      medicine,
      atMs,
      trusted: i % 1000 !== 13,
      by: PEOPLE[i % PEOPLE.length] ?? '',
      kg: 30 + (i % 40),
      volumeMl: 5 + (i % 90) / 10,
      meat: days,
      milk: unknown ? { kind: 'unknown', source: SOURCE } : days,
      clear: { meat: clear, milk: unknown ? { kind: 'unknown' } : clear },
    }),
  );
  if (i % 100 === 42) store.dayBook.addCorrection(correctionOf(i, atMs));
  if (i % 20 === 3)
    store.dayBook.addUntreated({
      id: `01920000-0000-7000-8000-${String(i).padStart(12, '0')}`,
      kind: i % 40 === 3 ? 'skipped' : 'lapsed',
      animalId: animal,
      offerId: null,
      reason: 'later',
      weightGrams: 41_000,
      atMs,
      by: PEOPLE[i % PEOPLE.length] ?? '',
      clockTrusted: true,
    });
}

function correctionOf(i: number, atMs: number): Correction {
  const kinds = [
    { kind: 'not-given' },
    { kind: 'wrong-animal', animalId: animalId((i + 1) % TEN_YEARS.animals) },
    { kind: 'wrong-volume', volumeMl: 4 },
    { kind: 'vet-time', meat: { unit: 'days', count: 9 }, milk: { unit: 'hours', count: 96 } },
  ] as const;
  const what = kinds[Math.floor(i / 100) % kinds.length] ?? kinds[0];
  const treatmentId = `01910000-0000-7000-8000-${String(i).padStart(12, '0')}`;
  return { id: `correction ${i}`, treatmentId, what, atMs: atMs + HOUR_MS, by: 'Wren' };
}

function weigh(store: Store, i: number, of: number): void {
  const atMs = Math.round(END_MS - YEARS_MS + (i * YEARS_MS) / of);
  const mass = grams(30_000 + ((i * 131) % 20_000));
  const weighing = { mass, uncertainty: grams(60), atMs, method: 'scale', hoursOffFeed: null } as const;
  store.weighings.add(animalId(i % TEN_YEARS.animals), weighing, 'Wren');
}

/** The id of a jug of the bench. */
export function jugId(i: number): string {
  return `01930000-0000-7000-8000-${String(i).padStart(12, '0')}`;
}

/** Bytes of the database once everything written has reached the file itself. */
function sizeOf(store: Store, path: string): number {
  store.checkpoint();
  return statSync(path).size;
}

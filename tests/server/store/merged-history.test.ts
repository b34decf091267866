import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cautionsFor } from '../../../core/dosing/cautions.ts';
import type { HerdAnimal } from '../../../core/herd/herd-animal.ts';
import { mergeAnimals } from '../../../core/herd/merge.ts';
import { partAnimals } from '../../../core/herd/part.ts';
import { DAY_MS, HOUR_MS } from '../../../core/moment.ts';
import { grams, kilograms } from '../../../core/quantity/mass.ts';
import { holdsOf } from '../../../core/round/clear-board.ts';
import { bodyConditionFrom } from '../../../core/worms/scores.ts';
import { lastWeightOf, weighingsOf } from '../../../server/herd/history.ts';
import type { Store } from '../../../server/store/store.ts';
import { makeCautionInput } from '../../core/make/caution-input.ts';
import { makeJug } from '../../core/make/jug.ts';
import { makeRegimen } from '../../core/make/regimen.ts';
import { bookStore, given } from '../make/book.ts';

const BEGIN = Date.UTC(2027, 0, 1, 9);
const MEDICINES = ['levamisole', 'thiamine', 'ivermectin'];

/** One thing that happens to the animal; `second` says that it is written under its second record. */
const event = fc.record({
  kind: fc.constantFrom(
    'dose',
    'dose',
    'part',
    'wrong-animal',
    'not-given',
    'skip',
    'weight',
    'said',
    'score',
    'note',
    'eggs',
  ),
  second: fc.boolean(),
  hoursOn: fc.integer({ min: 1, max: 60 }),
  medicine: fc.constantFrom(...MEDICINES),
  kg: fc.integer({ min: 36, max: 44 }),
  days: fc.integer({ min: 1, max: 30 }),
  lost: fc.oneof({ weight: 6, arbitrary: fc.constant(false) }, { weight: 1, arbitrary: fc.constant(true) }),
  of: fc.nat(8),
});
type Happened = typeof event extends fc.Arbitrary<infer T> ? T : never;
const history = fc.array(event, { minLength: 4, maxLength: 30 });

const SOURCE = { source: 'a source of a test', evidence: 'primary' as const };

/** Writes a history under one record, or split over two as each event says. */
function write(events: readonly Happened[], split: boolean): { store: Store; nowMs: number } {
  const store = bookStore();
  let nowMs = BEGIN;
  const doses: string[] = [];
  const weights: { animalId: string; id: string }[] = [];
  for (const [i, { kind, second, hoursOn, medicine, kg, days, lost, of }] of events.entries()) {
    const animalId = split && second ? 'bella' : 'anna';
    nowMs += hoursOn * HOUR_MS;
    const atMs = lost ? Date.UTC(2000, 0, 1, 12) : nowMs;
    const treatmentId = doses[of];
    switch (kind) {
      case 'dose':
      case 'part': {
        const time = { kind: 'days', days, ...SOURCE } as const;
        const clear = { kind: 'at', atMs: atMs + days * DAY_MS } as const;
        const leftMl = kind === 'part' ? 2 : null;
        store.dayBook.addTreatment(
          given({
            id: `t-${i}`,
            animal: animalId,
            medicine,
            atMs,
            kg,
            leftMl,
            trusted: !lost,
            meat: time,
            milk: time,
            clear: { meat: clear, milk: clear },
          }),
        );
        doses.push(`t-${i}`);
        break;
      }
      case 'wrong-animal':
      case 'not-given':
        if (treatmentId === undefined) break;
        store.dayBook.addCorrection({
          id: `c-${i}`,
          treatmentId,
          what: kind === 'not-given' ? { kind } : { kind, animalId: second ? animalId : 'cora' },
          atMs: nowMs,
          by: 'Kim',
        });
        break;
      case 'skip':
        store.dayBook.addUntreated({
          id: `u-${i}`,
          kind: 'skipped',
          animalId,
          offerId: null,
          reason: 'sick',
          weightGrams: null,
          atMs,
          by: 'Kim',
          clockTrusted: !lost,
        });
        break;
      case 'weight': {
        const mass = kilograms(kg);
        const weighing = {
          mass,
          uncertainty: grams(50),
          atMs: nowMs,
          method: 'scale',
          hoursOffFeed: null,
        } as const;
        store.weighings.add(animalId, weighing, 'Kim');
        weights.push({ animalId, id: `${nowMs}:${mass.value}` });
        break;
      }
      case 'said': {
        const weight = weights[of];
        if (weight !== undefined)
          store.weightWords.add(weight.animalId, weight.id, { said: 'wrong' }, 'Kim', nowMs);
        break;
      }
      case 'score':
        store.scores.add({
          animalId,
          atMs: nowMs,
          by: 'Kim',
          eyelid: null,
          body: bodyConditionFrom(3),
          soiling: null,
          jaw: null,
          coat: null,
        });
        break;
      case 'note':
        store.notes.add(animalId, { atMs: nowMs, by: 'Kim', note: 'lame' });
        break;
      case 'eggs':
        store.eggCounts.add({
          id: `e-${i}`,
          animalIds: [animalId],
          eggs: kg,
          method: { kind: 'told', factor: 50 },
          purpose: 'herd',
          test: null,
          takenAtMs: nowMs,
          loggedAtMs: nowMs,
          by: 'Kim',
        });
    }
  }
  return { store, nowMs };
}

function find(store: Store, id: string): HerdAnimal {
  const animal = store.animals.all().find((each) => each.id === id);
  if (animal === undefined) throw new Error(`there is no ${id}`);
  return animal;
}

function merge(store: Store, nowMs: number): void {
  const before = { kept: find(store, 'anna'), gone: find(store, 'bella') };
  const after = mergeAnimals(before.kept, before.gone, { name: 'kept' }, nowMs, 'Ida');
  if (!after.ok) throw new Error(after.why);
  store.whole(() => {
    store.animals.keepMerge('merged', before, after, nowMs, 'Ida');
    store.dayBook.refile('bella');
  });
}

function part(store: Store, nowMs: number): void {
  const before = { kept: find(store, 'anna'), gone: find(store, 'bella') };
  const was = store.animals.mergeOf('bella', before.kept);
  if (was === null) throw new Error('was never merged');
  const after = partAnimals(before.kept, before.gone, was, store.animals.all());
  if (!after.ok) throw new Error(after.why);
  store.whole(() => {
    store.animals.keepMerge('parted', before, after, nowMs, 'Ida');
    store.dayBook.refile('anna');
  });
}

const ALL = 1000;
/** The name stays in a treatment as it was called at the time. */
const unnamed = (read: unknown): unknown =>
  JSON.parse(JSON.stringify(read, (key, value) => (key === 'animal' ? { ...value, name: '' } : value)));

/** Everything that is read of one animal. */
function readsOf(store: Store, id: string, nowMs: number) {
  const animal = { id, species: 'goat', class: 'female' } as const;
  const { dayBook } = store;
  const earlier = dayBook.earlierDoses(id);
  const keptBack = dayBook.keepingBack(id);
  const asked = { animalId: id, fromMs: 0, toMs: nowMs + DAY_MS };
  return unnamed({
    earlier,
    cautions: MEDICINES.map((medicineId) =>
      cautionsFor({
        ...makeCautionInput({
          regimen: makeRegimen({ topUp: true }),
          jug: makeJug({ medicineId }),
          wallMs: nowMs + HOUR_MS,
        }),
        earlier: earlier.map((dose) => ({ ...dose, animalId: 'anna' })),
      }),
    ),
    keptBack,
    holds: holdsOf(keptBack, [animal], 'Pacific/Auckland').get(id),
    lastWeight: lastWeightOf(animal, store),
    weighings: weighingsOf(animal, store),
    dosedBy: dayBook.dosedBy(id, ALL),
    ofAnimal: dayBook.ofAnimal(id, ALL),
    page: dayBook.page({ animalId: id }, null, ALL),
    exported: [store.weighings.after(asked, null, ALL), store.scores.after(asked, 0, ALL)],
    scores: store.scores.newest(id, ALL),
    notes: store.notes.newest(id, ALL),
    eggs: store.eggCounts.entries().filter(({ record }) => record.animalIds.includes(id)),
  });
}

describe('a history split over two records', { timeout: 60_000 }, () => {
  test('is read, once they are merged, as if it had been written under one; parted, as before', () => {
    const seen = new Map<string, number>();
    fc.assert(
      fc.property(history, (events) => {
        const { store: whole, nowMs } = write(events, false);
        const { store: split } = write(events, true);
        const own = ['anna', 'bella'].map((id) => readsOf(split, id, nowMs));
        const records = split.dayBook.ofAnimal('bella', ALL).length;
        merge(split, nowMs);
        const expected = readsOf(whole, 'anna', nowMs);
        expect(readsOf(split, 'anna', nowMs)).toEqual(expected);
        for (const code of JSON.stringify(expected).match(/repeat-too-soon|same-active-today/g) ?? [])
          if (records > 0) seen.set(code, (seen.get(code) ?? 0) + 1);
        expect(split.dayBook.ofAnimal('bella', ALL)).toEqual([]);
        part(split, nowMs + 1);
        expect(['anna', 'bella'].map((id) => readsOf(split, id, nowMs))).toEqual(own);
        whole.close();
        split.close();
      }),
      { numRuns: 40 },
    );
    for (const code of ['repeat-too-soon', 'same-active-today'])
      expect(seen.get(code) ?? 0).toBeGreaterThan(3);
  });

  test('stays written as it was: a merge and its end are facts of their own', () => {
    const { store } = write([], false);
    store.dayBook.addTreatment(given({ id: 't-1', animal: 'bella', atMs: BEGIN }));
    merge(store, BEGIN + 1);
    expect(store.dayBook.entry('t-1')?.treatment.offer.animal).toMatchObject({ id: 'anna', name: 'bella' });
    expect(find(store, 'bella').life).toEqual({ kind: 'merged', intoId: 'anna', atMs: BEGIN + 1, by: 'Ida' });
    part(store, BEGIN + 2);
    expect(store.dayBook.entry('t-1')?.treatment.offer.animal.id).toBe('bella');
    expect(find(store, 'bella').life).toEqual({ kind: 'present' });
  });

  test('is found through a chain of merges', () => {
    const { store } = write([], false);
    store.dayBook.addTreatment(given({ id: 't-1', animal: 'cora', atMs: BEGIN }));
    const [bella, cora] = [find(store, 'bella'), find(store, 'cora')];
    const after = mergeAnimals(bella, cora, { name: 'kept' }, BEGIN, 'Ida');
    if (!after.ok) throw new Error(after.why);
    store.animals.keepMerge('merged', { kept: bella, gone: cora }, after, BEGIN, 'Ida');
    store.dayBook.refile('cora');
    merge(store, BEGIN + 1);
    expect(store.dayBook.earlierDoses('anna')).toMatchObject([
      { animalId: 'anna', medicineId: 'levamisole' },
    ]);
    part(store, BEGIN + 2);
    expect(store.dayBook.earlierDoses('anna')).toEqual([]);
    expect(store.dayBook.earlierDoses('bella')).toMatchObject([{ animalId: 'bella' }]);
  });
});

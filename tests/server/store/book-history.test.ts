import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cautionsFor } from '../../../core/dosing/cautions.ts';
import { restDue } from '../../../core/dosing/repeats.ts';
import { DAY_MS, HOUR_MS } from '../../../core/moment.ts';
import { kilograms } from '../../../core/quantity/mass.ts';
import { holdsOf } from '../../../core/round/clear-board.ts';
import { type DayBookEntry, earlierDoses, effectOf, pairUp } from '../../../core/round/day-book.ts';
import type { Correction, Treatment } from '../../../core/round/treatment.ts';
import { makeCautionInput } from '../../core/make/caution-input.ts';
import { makeJug } from '../../core/make/jug.ts';
import { makeRegimen } from '../../core/make/regimen.ts';
import { bookStore, given } from '../make/book.ts';

const ANIMALS = ['anna', 'bella', 'cora', 'dot', 'fern'];
const MEDICINES = ['levamisole', 'thiamine', 'ivermectin'];
const BEGIN = Date.UTC(2027, 0, 1, 9);
const SOURCE = { source: 'a source of a test' };

const withdrawal = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.record({ kind: fc.constant('days' as const), days: fc.integer({ min: 1, max: 30 }) }),
  },
  { weight: 2, arbitrary: fc.constant({ kind: 'unknown' as const }) },
  { weight: 1, arbitrary: fc.constant({ kind: 'not-for-people' as const }) },
);
const dose = fc.record({
  type: fc.constant('dose' as const),
  animal: fc.constantFrom(...ANIMALS.slice(0, 4)),
  medicine: fc.constantFrom(...MEDICINES),
  jug: fc.constantFrom('jug-7', 'jug-8'),
  hoursOn: fc.oneof(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 900 })),
  lost: fc.oneof({ weight: 5, arbitrary: fc.constant(false) }, { weight: 1, arbitrary: fc.constant(true) }),
  meat: withdrawal,
  milk: withdrawal,
  kg: fc.integer({ min: 30, max: 50 }),
  leftMl: fc.option(fc.integer({ min: 1, max: 5 }), { nil: null }),
});
const vetTime = fc.option(
  fc.record({ unit: fc.constantFrom('hours' as const, 'days' as const), count: fc.nat(40) }),
  { nil: null },
);
const correction = fc.record({
  type: fc.constant('correction' as const),
  of: fc.nat(30),
  what: fc.oneof<fc.Arbitrary<Correction['what']>[]>(
    fc.constant({ kind: 'not-given' }),
    fc.record({ kind: fc.constant('wrong-animal'), animalId: fc.constantFrom(...ANIMALS) }),
    fc.record({ kind: fc.constant('wrong-volume'), volumeMl: fc.integer({ min: 1, max: 40 }) }),
    fc.record({ kind: fc.constant('vet-time'), meat: vetTime, milk: vetTime }),
  ),
});
type Events = typeof years extends fc.Arbitrary<infer T> ? T : never;
const years = fc.array(fc.oneof({ weight: 3, arbitrary: dose }, { weight: 1, arbitrary: correction }), {
  minLength: 4,
  maxLength: 40,
});

/** Writes random years to a store, and keeps every entry beside it as the plain lists they are. */
function write(events: Events) {
  const store = bookStore();
  const treatments: Treatment[] = [];
  const corrections: Correction[] = [];
  let nowMs = BEGIN;
  for (const [i, event] of events.entries()) {
    if (event.type === 'dose') {
      nowMs += event.hoursOn * HOUR_MS;
      // A clock that lost its battery says some day of before.
      const atMs = event.lost ? Date.UTC(2000, 0, 1, 12) : nowMs;
      const meat = { ...event.meat, ...SOURCE, evidence: 'primary' as const };
      const milk = { ...event.milk, ...SOURCE, evidence: 'primary' as const };
      const treatment = given({
        ...event,
        id: `t-${i}`,
        atMs,
        trusted: !event.lost,
        meat: meat.kind === 'days' ? meat : { kind: meat.kind, ...SOURCE },
        milk: milk.kind === 'days' ? milk : { kind: milk.kind, ...SOURCE },
        clear: {
          meat: meat.kind === 'days' ? { kind: 'at', atMs: atMs + meat.days * DAY_MS } : { kind: meat.kind },
          milk: milk.kind === 'days' ? { kind: 'at', atMs: atMs + milk.days * DAY_MS } : { kind: milk.kind },
        },
      });
      store.dayBook.addTreatment(treatment);
      treatments.push(treatment);
    } else {
      const treatment = treatments[event.of];
      if (treatment === undefined) continue;
      const written = { id: `c-${i}`, treatmentId: treatment.id, what: event.what, atMs: nowMs, by: 'Kim' };
      store.dayBook.addCorrection(written);
      corrections.push(written);
    }
  }
  return { store, entries: pairUp(treatments, corrections), nowMs };
}

function property(check: (book: ReturnType<typeof write>) => void, numRuns = 60): void {
  fc.assert(
    fc.property(years, (events) => {
      const book = write(events);
      check(book);
      book.store.close();
    }),
    { numRuns },
  );
}

const SPECIES = ANIMALS.map((id) => ({
  id,
  species: id === 'fern' ? ('sheep' as const) : ('goat' as const),
}));

describe('what the disk says of the past is what the whole day book says', { timeout: 60_000 }, () => {
  test('of what is kept back, in whatever zone the farm is', () => {
    let kept = 0;
    property(({ store, entries }) => {
      for (const zone of ['UTC', 'Pacific/Auckland', 'America/Los_Angeles']) {
        const whole = holdsOf(entries, SPECIES, zone);
        for (const animal of SPECIES) {
          const few = store.dayBook.keepingBack(animal.id);
          expect(holdsOf(few, [animal], zone).get(animal.id)).toEqual(whole.get(animal.id));
          kept += few.length;
        }
      }
    });
    expect(kept).toBeGreaterThan(500);
  });

  test('of earlier doses, as far as any caution can tell', () => {
    const counts = new Map<string, number>();
    property(({ store, entries, nowMs }) => {
      const all = earlierDoses(entries);
      for (const animal of ANIMALS) {
        const own = all.filter(({ animalId }) => animalId === animal);
        const few = store.dayBook.earlierDoses(animal);
        for (const medicineId of MEDICINES) {
          for (const clockTrusted of [true, false]) {
            const topUp = makeRegimen({ topUp: true });
            const input = makeCautionInput({
              regimen: topUp,
              jug: makeJug({ medicineId }),
              wallMs: nowMs + HOUR_MS,
              clockTrusted,
            });
            const rest = restDue({ ...input, earlier: own });
            expect(restDue({ ...input, earlier: few })).toEqual(rest);
            if (rest !== null) counts.set('rest', (counts.get('rest') ?? 0) + 1);
            const cautions = cautionsFor({ ...input, earlier: few });
            expect(cautions).toEqual(cautionsFor({ ...input, earlier: own }));
            for (const { code } of cautions) counts.set(code, (counts.get(code) ?? 0) + 1);
          }
        }
      }
    });
    for (const code of ['same-active-today', 'repeat-too-soon', 'clock-untrusted', 'rest'])
      expect(counts.get(code) ?? 0).toBeGreaterThan(5);
  });

  test('of what was drawn from each jug', () => {
    property(({ store, entries }) => {
      for (const id of ['jug-7', 'jug-8']) {
        const taken = entries.filter(
          (entry) => entry.treatment.offer.jug.id === id && effectOf(entry).animalId !== null,
        );
        const sum = (of: (entry: DayBookEntry) => number) => taken.reduce((all, entry) => all + of(entry), 0);
        const jug = store.jugs.find(id);
        expect(jug?.drawn.value).toBeCloseTo(
          sum((entry) => effectOf(entry).volumeMl),
          6,
        );
        expect(jug?.draws).toBe(sum((entry) => entry.treatment.offer.dose.plan.draws.length));
      }
    });
  });

  test('of the last weight each animal was dosed by', () => {
    property(({ store, entries }) => {
      for (const animal of ANIMALS) {
        const own = entries.filter((entry) => effectOf(entry).animalId === animal);
        const newest = Math.max(...own.map(({ treatment }) => treatment.offer.weight.atMs));
        const last = own.findLast(({ treatment }) => treatment.offer.weight.atMs === newest);
        const weight = last?.treatment.offer.weight;
        const [dosedBy] = store.dayBook.dosedBy(animal, 1);
        expect(dosedBy === undefined ? null : { mass: dosedBy.mass, atMs: dosedBy.atMs }).toEqual(
          weight === undefined ? null : { mass: weight.held.mass, atMs: weight.atMs },
        );
      }
    });
  });
});

test('a treatment of unknown end is found after ten years of others', () => {
  const store = bookStore();
  const milk = { kind: 'unknown', ...SOURCE } as const;
  store.dayBook.addTreatment(given({ id: 'old', atMs: BEGIN, milk, clear: { milk: { kind: 'unknown' } } }));
  const days = { kind: 'days', days: 4, evidence: 'primary', ...SOURCE } as const;
  for (let i = 1; i < 400; i += 1) {
    const atMs = BEGIN + 9 * i * DAY_MS;
    const clear = { kind: 'at', atMs: atMs + 4 * DAY_MS } as const;
    store.dayBook.addTreatment(
      given({ id: `t-${i}`, atMs, meat: days, milk: days, clear: { meat: clear, milk: clear } }),
    );
  }
  expect(store.dayBook.keepingBack('anna').map(({ treatment }) => treatment.id)).toEqual(['old', 't-399']);
});

test('a dose of a group is a dose and no weighing', () => {
  const store = bookStore();
  const alone = { id: 'alone', atMs: BEGIN, kg: 40 };
  store.dayBook.addTreatment(given(alone));
  const group = {
    heaviestId: 'bella',
    heaviestName: 'bella',
    heaviest: kilograms(44),
    weighedAtMs: BEGIN,
    members: 2,
  };
  const before = store.jugs.find('jug-7');
  store.dayBook.addTreatment(
    given({ id: 'in-group', atMs: BEGIN + 30 * DAY_MS, kg: 40.5, volumeMl: 9, group }),
  );
  const after = store.jugs.find('jug-7');

  for (const found of [store.dayBook.weights('anna', 5), store.dayBook.dosedBy('anna', 5)])
    expect(found.map(({ mass }) => mass.value)).toEqual([40_000]);
  expect(store.dayBook.earlierDoses('anna').map(({ givenAtMs }) => givenAtMs)).toContain(BEGIN + 30 * DAY_MS);
  expect((after?.drawn.value ?? 0) - (before?.drawn.value ?? 0)).toBeCloseTo(9, 9);
  expect(store.dayBook.newest(1)[0]?.treatment.offer.group).toEqual(group);
});

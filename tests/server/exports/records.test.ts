import { expect, test } from 'vitest';
import { DAY_MS } from '../../../core/moment.ts';
import { kilograms } from '../../../core/quantity/mass.ts';
import { weightsOf } from '../../../server/exports/records.ts';
import { bookStore, given } from '../make/book.ts';

const BEGIN = Date.UTC(2027, 0, 1, 9);

test('a weight leaves once, though a dose of a group went by it again', () => {
  const store = bookStore();
  store.dayBook.addTreatment(given({ id: 'alone', atMs: BEGIN, kg: 40 }));
  const group = {
    heaviestId: 'bella',
    heaviestName: 'bella',
    heaviest: kilograms(44),
    weighedAtMs: BEGIN,
    members: 2,
  };
  store.dayBook.addTreatment(given({ id: 'in-group', atMs: BEGIN + 20 * DAY_MS, kg: 40, group }));

  const asked = { animalId: null, name: 'all', fromMs: BEGIN - DAY_MS, toMs: BEGIN + 40 * DAY_MS };
  expect(
    [...weightsOf(store, [{ id: 'anna', life: { kind: 'present' } }], asked)].map(
      ({ treatmentId }) => treatmentId,
    ),
  ).toEqual(['alone']);
});

import { kilograms } from '../../../core/quantity/mass.ts';
import { bodyConditionFrom } from '../../../core/worms/scores.ts';
import type { Store } from '../../../server/store/store.ts';
import { given } from './book.ts';

const SLIDE = { kind: 'slide', dungGrams: 2, suspensionMl: 60, countedMl: 0.9 } as const;

/** Writes one record at least of every kind that is told, into a store of `bookStore`. */
export function writeOneOfEach(store: Store): void {
  const [anna, bella] = ['anna', 'bella'].map((id) => store.animals.all().find((each) => each.id === id));
  if (anna === undefined || bella === undefined) throw new Error('the herd is not there');
  store.animals.change(anna, { ...anna, pen: 'north' }, 1000, 'Kim');
  const gone = { ...bella, life: { kind: 'merged', intoId: 'anna', atMs: 2000, by: 'Kim' } } as const;
  const kept = { ...anna, pen: 'north' };
  store.animals.keepMerge('merged', { kept, gone: bella }, { kept, gone }, 2000, 'Kim');
  store.weighings.add(
    'cora',
    { mass: kilograms(41.5), uncertainty: null, atMs: 3000, method: 'scale', hoursOffFeed: null },
    'Kim',
  );
  store.weightWords.add('cora', '3000:41500', { said: 'true' }, 'Kim', 3500);
  store.scores.add({
    animalId: 'cora',
    atMs: 4000,
    by: 'Kim',
    eyelid: 3,
    body: null,
    soiling: null,
    jaw: null,
    coat: null,
  });
  const mistaken = { eyelid: null, body: bodyConditionFrom(2.5), soiling: null, jaw: null, coat: null };
  store.scores.add({ animalId: 'cora', atMs: 4100, by: 'Kim', ...mistaken });
  store.scores.takeBack({ animalId: 'cora', scoredAtMs: 4100, atMs: 4200, by: 'Kim' });
  store.notes.add('cora', { atMs: 5000, by: 'Kim', note: 'lame' });
  store.dayBook.addTreatment(given({ id: 't1', atMs: 6000, animal: 'cora' }));
  store.dayBook.addCorrection({
    id: 'c1',
    treatmentId: 't1',
    what: { kind: 'wrong-volume', volumeMl: 3 },
    atMs: 7000,
    by: 'Kim',
  });
  store.dayBook.addUntreated({
    id: 'u1',
    kind: 'skipped',
    animalId: 'dot',
    offerId: null,
    reason: 'later',
    weightGrams: null,
    atMs: 8000,
    by: 'Kim',
    clockTrusted: true,
  });
  store.jugs.discard('jug-8', 9000);
  store.reductionTests.add({
    id: 'test-1',
    medicineId: 'levamisole',
    species: 'goat',
    design: 'unpaired',
    protocol: 'research',
    method: SLIDE,
    animals: [{ animalId: 'cora', treatmentId: 't1' }],
    plannedAtMs: 9000,
    by: 'Kim',
    end: null,
  });
  store.eggCounts.add({
    id: 'count-1',
    animalIds: ['cora', 'dot'],
    eggs: 17,
    method: SLIDE,
    purpose: 'herd',
    test: null,
    takenAtMs: 9000,
    loggedAtMs: 9500,
    by: 'Kim',
  });
  store.eggCounts.correct({
    id: 'fix-1',
    countId: 'count-1',
    what: { kind: 'other-number', eggs: 7 },
    atMs: 9900,
    by: 'Kim',
  });
  store.dayBook.correctClock({
    id: 'clock-1',
    board: { start: 'start-1', sinceMs: 1000 },
    wasMs: null,
    isMs: 9980,
    told: 'person',
    by: 'Kim',
    timeZone: 'UTC',
  });
  store.reductionTests.end('test-1', { how: 'given-up', atMs: 9990, by: 'Kim' });
}

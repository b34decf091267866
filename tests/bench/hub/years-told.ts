import { clockText } from '../../../core/hub/clock.ts';
import type { Event, EventKind } from '../../../core/hub/event.ts';
import { countIn } from '../../../core/medicine/approval.ts';
import type { Correction } from '../../../core/round/treatment.ts';
import { createStore } from '../../../server/store/store.ts';
import type { ToldBody } from '../../../server/store/told-bodies.ts';
import type { Untreated } from '../../../server/store/untreated.ts';
import { furnish } from '../ten-years/build.ts';
import {
  animalId,
  correctionOf,
  givenAt,
  givenBy,
  TEN_YEARS,
  treatmentOf,
  untreatedAfter,
} from '../ten-years/years.ts';

/** The kiosk that tells of the ten years, and its only life. */
export const TELLER = { kiosk: 'kiosk-of-years', life: 'life-of-years' };

const WEIGHTS_A_DOSE = TEN_YEARS.weighings / TEN_YEARS.treatments;

type Told = { [K in EventKind]: readonly [K, ToldBody<K>] }[EventKind];

/** The events of the newest share of the ten years, as their kiosk would tell them: herd and jugs, then day by day. */
export function* eventsOfYears(share: number): Generator<Event> {
  const first = TEN_YEARS.treatments - Math.round(TEN_YEARS.treatments * share);
  let sequence = 0;
  const event = (kind: string, body: unknown, ms: number): Event => {
    sequence += 1;
    const id = `${TELLER.life}-${sequence}`;
    return { ...TELLER, sequence, id, clock: clockText({ ms, count: sequence % 100_000 }), kind, body };
  };
  for (const { kind, body } of herdAndJugs(first)) yield event(kind, body, givenAt(first));
  for (let i = first; i < TEN_YEARS.treatments; i += 1)
    for (const [kind, body] of visitsOf(i)) yield event(kind, body, givenAt(i));
}

function herdAndJugs(first: number): Event[] {
  const store = createStore(':memory:');
  furnish(store, first);
  const events = store.events.after(store.events.self().life, 0, Number.MAX_SAFE_INTEGER);
  store.close();
  return events;
}

function* visitsOf(i: number): Generator<Told> {
  yield ['treatment', treatmentOf(i) as ToldBody<'treatment'>];
  const [untreated, correction] = [untreatedAfter(i), correctionOf(i)];
  if (untreated !== null) yield ['untreated', untreatedTold(untreated)];
  if (correction !== null) yield ['correction', correctionTold(correction)];
  const apart = (givenAt(i + 1) - givenAt(i)) / WEIGHTS_A_DOSE;
  for (let j = 0; j < WEIGHTS_A_DOSE; j += 1) {
    const number = i * WEIGHTS_A_DOSE + j;
    yield [
      'weighing',
      {
        animal: animalId(number % TEN_YEARS.animals),
        at_ms: Math.round(givenAt(i) + j * apart),
        mass_g:
          30_000 + (number % TEN_YEARS.animals) * 20 + (Math.floor(number / TEN_YEARS.animals) % 40) * 50,
        uncertainty_g: 60,
        method: 'scale',
        hours_off_feed: null,
        by: givenBy(i),
      },
    ];
  }
}

function untreatedTold(untreated: Untreated): ToldBody<'untreated'> {
  const { id, kind, animalId: animal, offerId, reason, weightGrams, atMs, by } = untreated;
  return {
    id,
    kind,
    animal_id: animal,
    offer_id: offerId,
    reason,
    weight_g: weightGrams,
    at_ms: atMs,
    by,
    clock_trusted: 1,
  };
}

function correctionTold({ id, treatmentId, what, atMs, by }: Correction): ToldBody<'correction'> {
  const { meat, milk } = what.kind === 'vet-time' ? what : { meat: null, milk: null };
  return {
    id,
    treatment_id: treatmentId,
    kind: what.kind,
    animal_id: what.kind === 'wrong-animal' ? what.animalId : null,
    volume_ml: what.kind === 'wrong-volume' ? what.volumeMl : null,
    meat_hours: countIn(meat, 'hours'),
    meat_days: countIn(meat, 'days'),
    milk_hours: countIn(milk, 'hours'),
    milk_days: countIn(milk, 'days'),
    at_ms: atMs,
    by,
    after: [],
  };
}

import { clockText } from '../../../core/hub/clock.ts';
import type { Event } from '../../../core/hub/event.ts';
import { animalId, givenAt, treatmentOf, untreatedAfter } from '../ten-years/years.ts';

/** What the events of a kiosk begin with. */
export interface Teller {
  readonly kiosk: string;
  readonly life: string;
  /** How far its clock is off, in milliseconds. */
  readonly offMs?: number;
}

/** For each animal of a busy day: its eyelids, its weight, and a dose or why it got none. */
export const EVENTS_AN_ANIMAL = 3;

/** The event of a number, from 1, in the life of a kiosk that has busy days: of the size and kinds of real ones. */
export function toldEvent({ kiosk, life, offMs = 0 }: Teller, sequence: number): Event {
  const place = sequence - 1;
  const visit = Math.floor(place / EVENTS_AN_ANIMAL);
  const atMs = givenAt(visit);
  const clock = clockText({ ms: Math.max(0, atMs + offMs), count: place % EVENTS_AN_ANIMAL });
  const [kind, body] = told(visit, place % EVENTS_AN_ANIMAL, atMs);
  return { kiosk, life, sequence, id: `${life}-${sequence}`, clock, kind, body };
}

function told(visit: number, which: number, atMs: number): [string, object] {
  const of = { animal: animalId(visit % 500), at_ms: atMs, by: 'Wren' };
  if (which === 0) return ['score', { ...of, eyelid: 3, body: 2.5, soiling: null, jaw: null, coat: null }];
  if (which === 1)
    return ['weighing', { ...of, mass_g: 41_000, uncertainty_g: 60, method: 'scale', hours_off_feed: null }];
  // Half of them are dosed.
  return visit % 2 === 0 ? ['treatment', treatmentOf(visit)] : ['untreated', { ...untreatedAfter(3), ...of }];
}

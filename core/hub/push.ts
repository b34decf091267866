import type { Event } from './event.ts';

/** What is held of one life of a kiosk. */
export interface HeldOf {
  /** The number of its last event; 0 where none is held. */
  readonly head: number;
  /** The id of the event of a number; `undefined` where it is not held. */
  readonly idAt: (sequence: number) => string | undefined;
}

/** Events of one life, in the order of their numbers. */
export interface Batch {
  /** The id of the event before the first; `null` where the first is the very first. */
  readonly before: string | null;
  readonly events: readonly Pick<Event, 'id' | 'sequence'>[];
}

/** Why events are refused, none of them kept. */
export type PushRefusal =
  /** Their numbers do not follow each other. */
  | 'out-of-order'
  /** Events before them are missing: push again from what is held. */
  | 'gap'
  /** Another event of one of their numbers is held: the kiosk was put back to an earlier state, or is there twice. */
  | 'sequence-reused';

/** What becomes of a batch: from which of its events on it is new, or why it is refused. */
export type PushVerdict =
  | { readonly ok: true; readonly newFrom: number }
  | { readonly ok: false; readonly why: PushRefusal };

/** Judges a batch against what is held, so that one sent twice changes nothing and no event is ever passed over. */
export function judgePush({ head, idAt }: HeldOf, { before, events }: Batch): PushVerdict {
  const [first] = events;
  if (first === undefined) return { ok: true, newFrom: 0 };
  const follow = events.every(({ sequence }, place) => sequence === first.sequence + place);
  if (!follow || first.sequence < 1 || (before === null) !== (first.sequence === 1))
    return { ok: false, why: 'out-of-order' };
  if (first.sequence > head + 1) return { ok: false, why: 'gap' };
  if (before !== null && idAt(first.sequence - 1) !== before) return { ok: false, why: 'sequence-reused' };
  const known = events.filter(({ sequence }) => sequence <= head);
  if (known.some(({ id, sequence }) => idAt(sequence) !== id)) return { ok: false, why: 'sequence-reused' };
  return { ok: true, newFrom: known.length };
}

/** The last number up to which two hold the same events of a life, at most `to`; asks for ids in steps of a half. */
export async function lastInCommon(
  to: number,
  same: (sequence: number) => boolean | Promise<boolean>,
): Promise<number> {
  let [low, high] = [0, to];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (await same(middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}

import type { TimeZone } from '../../core/dosing/local-time.ts';
import type { Animal } from '../../core/herd/animal.ts';
import { type Hold, type Holds, holdsOf, useNow } from '../../core/round/clear-board.ts';
import type { DayBookEntry } from '../../core/round/day-book.ts';
import type { BoardRowView, UseView } from '../../shared/board.ts';
import { rfc3339 } from './times.ts';

/** What the board is made from. */
export interface BoardInput {
  readonly entries: readonly DayBookEntry[];
  readonly animals: readonly Animal[];
  readonly timeZone: TimeZone;
  readonly wallMs: number;
  readonly clockTrusted: boolean;
}

/** What each day book keeps back, worked out once: it is replaced whenever it changes, the state is shown far oftener. */
const HOLDS = new WeakMap<
  readonly DayBookEntry[],
  { zone: TimeZone; count: number; holds: ReadonlyMap<string, Holds> }
>();

function heldBack({ entries, animals, timeZone }: BoardInput): ReadonlyMap<string, Holds> {
  const known = HOLDS.get(entries);
  if (known?.zone === timeZone && known.count === animals.length) return known.holds;
  const holds = holdsOf(entries, animals, timeZone);
  HOLDS.set(entries, { zone: timeZone, count: animals.length, holds });
  return holds;
}

function useView(hold: Hold | undefined, { wallMs, clockTrusted }: BoardInput): UseView {
  const use = useNow(hold, wallMs, clockTrusted);
  if (hold === undefined || use.kind === 'free') return { kind: 'free' };
  const { treatmentId: treatment } = hold;
  if (use.kind !== 'at') return { kind: use.kind, treatment };
  return { kind: 'at', at: rfc3339(use.atMs), provisional: hold.provisional || !clockTrusted, treatment };
}

/** Who may be milked and who may be sold, in the order of the herd. */
export function boardView(input: BoardInput): BoardRowView[] {
  const holds = heldBack(input);
  return input.animals.map((animal) => {
    const hold = holds.get(animal.id);
    return {
      animal: animal.id,
      milk: animal.class === 'female' || animal.inMilk ? useView(hold?.milk, input) : null,
      meat: useView(hold?.meat, input),
    };
  });
}

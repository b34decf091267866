import type { TimeZone } from '../../core/dosing/local-time.ts';
import type { Animal } from '../../core/herd/animal.ts';
import { type Formulary, medicineById } from '../../core/medicine/formulary.ts';
import { type Hold, type Holds, holdsOf, useNow } from '../../core/round/clear-board.ts';
import type { DayBookEntry } from '../../core/round/day-book.ts';
import type { BecauseView, BoardRowView, UseView } from '../../shared/board.ts';
import { withdrawalFigure } from './regimen-view.ts';
import { rfc3339 } from './times.ts';

/** What the board is made from. */
export interface BoardInput {
  /** By animal, the treatments that decide what is kept back of it. */
  readonly keepingBack: ReadonlyMap<string, readonly DayBookEntry[]>;
  readonly animals: readonly Animal[];
  readonly formulary: Formulary;
  readonly timeZone: TimeZone;
  readonly wallMs: number;
  readonly clockTrusted: boolean;
}

/** What is kept back of each animal, worked out once: its treatments are read anew whenever one changes. */
const HOLDS = new WeakMap<readonly DayBookEntry[], { zone: TimeZone; holds: Holds | undefined }>();

function heldBack({ keepingBack, timeZone }: BoardInput, animal: Animal): Holds | undefined {
  const entries = keepingBack.get(animal.id);
  if (entries === undefined) return undefined;
  const known = HOLDS.get(entries);
  if (known?.zone === timeZone) return known.holds;
  const holds = holdsOf(entries, [animal], timeZone).get(animal.id);
  HOLDS.set(entries, { zone: timeZone, holds });
  return holds;
}

function useView(hold: Hold | undefined, input: BoardInput): UseView {
  const { wallMs, clockTrusted } = input;
  const use = useNow(hold, wallMs, clockTrusted);
  if (hold === undefined || use.kind === 'free') return { kind: 'free' };
  const { treatmentId: treatment } = hold;
  const because = becauseView(hold, input.formulary);
  if (use.kind !== 'at') return { kind: use.kind, treatment, because };
  const provisional = hold.provisional || !clockTrusted;
  return { kind: 'at', at: rfc3339(use.atMs), provisional, treatment, because };
}

function becauseView(
  { because: { medicineId, withdrawal, fromMs } }: Hold,
  formulary: Formulary,
): BecauseView {
  const { label: _, ...term } = withdrawalFigure('meat', withdrawal);
  return {
    ...term,
    medicine: medicineById(formulary, medicineId)?.name ?? medicineId,
    from: rfc3339(fromMs),
  };
}

/** Who may be milked and who may be sold, in the order of the herd. */
export function boardView(input: BoardInput): BoardRowView[] {
  return input.animals.map((animal) => {
    const hold = heldBack(input, animal);
    return {
      animal: animal.id,
      milk: animal.class === 'female' || animal.inMilk ? useView(hold?.milk, input) : null,
      meat: useView(hold?.meat, input),
    };
  });
}

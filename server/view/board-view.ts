import type { TimeZone } from '../../core/dosing/local-time.ts';
import type { Animal } from '../../core/herd/animal.ts';
import { type Formulary, medicineById } from '../../core/medicine/formulary.ts';
import { type Hold, type Holds, holdsOf, useNow } from '../../core/round/clear-board.ts';
import type { DayBookEntry } from '../../core/round/day-book.ts';
import type { BecauseView, BoardRowView, UseView } from '../../shared/board.ts';
import type { FarmRecords } from '../barn/barn-context.ts';
import { keptBy } from './kept.ts';
import { withdrawalFigure } from './regimen-view.ts';
import { rfc3339 } from './times.ts';

/** What the board is made from. */
interface BoardInput {
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
function boardView(input: BoardInput): BoardRowView[] {
  return input.animals.map((animal) => {
    const hold = heldBack(input, animal);
    return {
      animal: animal.id,
      milk: animal.class === 'female' || animal.inMilk ? useView(hold?.milk, input) : null,
      meat: useView(hold?.meat, input),
    };
  });
}

const kept = keptBy<FarmRecords, BoardRowView[]>();

/** The board of a farm now; the same array while nothing on it changed. */
export function boardNow(farm: FarmRecords): BoardRowView[] {
  const { memory, clock, config } = farm;
  const { keepingBack, animals, formulary } = memory;
  const { timeZone } = config;
  const { wallMs } = clock.now();
  const clockTrusted = clock.isTrusted();
  const input = { keepingBack, animals, formulary, timeZone, wallMs, clockTrusted };
  const rests = [keepingBack, animals, formulary, timeZone, clockTrusted, timesPassed(input)];
  return kept(farm, rests, () => boardView(input));
}

/** How many of the board's times have passed: of the same times, as many are always the same ones. */
function timesPassed(input: BoardInput): number {
  const passed = (hold: Hold | undefined): number =>
    hold?.clear.kind === 'at' && hold.clear.atMs <= input.wallMs ? 1 : 0;
  return input.animals.reduce((count, animal) => {
    const holds = heldBack(input, animal);
    return count + passed(holds?.meat) + passed(holds?.milk);
  }, 0);
}

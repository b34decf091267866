import type { BoardRowView, UseView } from '../../shared/board.ts';
import type { Show } from '../words/show.ts';
import type { FirstWords } from '../words/words.ts';

/** Whether something keeps it back now. */
export function isHeld(use: UseView | null): boolean {
  return use !== null && use.kind !== 'free';
}

/** How many animals are kept back from milking and from sale. */
export function heldCounts(board: readonly BoardRowView[]): { milk: number; meat: number } {
  return {
    milk: board.filter(({ milk }) => isHeld(milk)).length,
    meat: board.filter(({ meat }) => isHeld(meat)).length,
  };
}

/** The rows in the order in which they matter: those kept back first, each group in the order of the herd. */
export function heldFirst(board: readonly BoardRowView[]): BoardRowView[] {
  const held = (row: BoardRowView): number => (isHeld(row.milk) || isHeld(row.meat) ? 0 : 1);
  return [...board].sort((a, b) => held(a) - held(b));
}

/** A standing in a few words. */
export function useSaid(use: UseView | null, words: FirstWords, show: Show): string {
  if (use === null) return words.board.noMilk;
  switch (use.kind) {
    case 'free':
      return words.board.free;
    case 'at':
      return use.provisional ? words.board.provisional(show.when(use.at)) : show.when(use.at);
    case 'not-for-people':
      return words.board.never;
    case 'unknown':
      return words.board.unknown;
  }
}

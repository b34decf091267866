import type { UseView } from '../../shared/board.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';

/** Why milk or meat of an animal is kept back, as sentences; none where it is free. */
export function becauseLines(use: UseView | null, words: Words, show: Show): string[] {
  if (use === null || use.kind === 'free') return [];
  const { board, shed } = words;
  const { because } = use;
  const given = board.given(words.shipped(because.medicine), show.when(because.from));
  const unit = because.unit === 'hours' ? 'hours' : 'days';
  const term =
    use.kind === 'at' && because.value !== null
      ? board.term[unit](show.number(because.value, 1))
      : board.noTerm[use.kind === 'not-for-people' ? 'not-for-people' : 'unknown'];
  return [
    board.because(given, term),
    board.whoSays(shed.evidence[because.evidence], shed.source(because.source)),
    ...(use.kind === 'at' && use.provisional ? [board.provisionalWhy] : []),
  ];
}

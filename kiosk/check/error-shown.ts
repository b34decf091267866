import type { Show } from '../words/show.ts';

/** An error in divisions with its sign, to a tenth: "+1.2", "0", "−0.4". */
export function errorShown(error: number, show: Show): string {
  const shown = show.number(Math.abs(error), 1);
  if (shown === '0') return shown;
  return `${error > 0 ? '+' : '−'}${shown}`;
}

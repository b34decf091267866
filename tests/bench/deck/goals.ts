import type { Grade } from './parameters.ts';
import type { Score } from './score.ts';

/** What the estimator is to reach in a grade. Percentages of weight, shares, and seconds. */
interface Goals {
  readonly meanError: number | null;
  readonly falseHolds: number;
  readonly heldOfStanding: number;
}

const GOALS: Readonly<Record<Grade, Goals>> = {
  calm: { meanError: 0.3, falseHolds: 0.002, heldOfStanding: 0.97 },
  restless: { meanError: 0.3, falseHolds: 0.002, heldOfStanding: 0.97 },
  violent: { meanError: null, falseHolds: 0.005, heldOfStanding: 0.8 },
};

/** How each goal of a grade fared, a line each; what is missed says by how much. `division` is its mean share in per cent. */
export function goalLines(grade: Grade, score: Score, division: number): string[] {
  const goals = GOALS[grade];
  const percent = (share: number): string => `${(100 * share).toFixed(2)} %`;
  const lines = [
    line(
      'false holds',
      score.falseHolds <= goals.falseHolds,
      percent(score.falseHolds),
      percent(goals.falseHolds),
    ),
    line(
      'held of those that stand 5 s',
      score.heldOfStanding >= goals.heldOfStanding,
      percent(score.heldOfStanding),
      percent(goals.heldOfStanding),
    ),
  ];
  if (goals.meanError !== null) {
    const most = goals.meanError + division;
    const goal = `${most.toFixed(2)} % (${goals.meanError} % and the division's ${division.toFixed(2)} %)`;
    lines.unshift(line('mean error', score.meanError <= most, `${score.meanError.toFixed(2)} %`, goal));
  }
  return lines.map((text) => `${grade.padEnd(9)} ${text}`);
}

function line(what: string, met: boolean, is: string, goal: string): string {
  return `${what.padEnd(30)} ${met ? 'met   ' : 'MISSED'}  ${is}, goal ${goal}`;
}

/** One measured figure: a ratio that means the same on every machine, and the raw figure behind it. */
export interface Figure {
  readonly what: string;
  /** How many times the comparison, in the same run. */
  readonly ratio: number;
  readonly against: string;
  readonly raw: string;
}

/** A figure under the title of its table, as a run is kept. */
export interface KeptFigure extends Figure {
  readonly title: string;
}

const printed: KeptFigure[] = [];

/** All figures that were printed in this run, in that order. */
export const figuresOfRun = (): readonly KeptFigure[] => printed;

/** Prints figures as a table, ratios first. */
export function printFigures(title: string, figures: readonly Figure[]): void {
  printed.push(...figures.map((figure) => ({ title, ...figure })));
  printTable(title, figures);
}

/** Prints the figures of all tables of this run as one, where there were several. */
export function printInOne(): void {
  const titles = new Set(printed.map(({ title }) => title));
  if (titles.size > 1) printTable('All in one', printed);
}

function printTable(title: string, figures: readonly Figure[]): void {
  console.log(`\n${title}`);
  for (const { what, ratio, against, raw } of figures) {
    console.log(`${ratio.toPrecision(3).padStart(9)} x  ${what.padEnd(46)} against ${against} (${raw})`);
  }
}

/** Runs work in rounds for about `forMs` and returns how often a second it ran, by the best third of the rounds. */
export function ratePerSecond(work: () => void, timesPerRound: number, forMs = 600): number {
  const rates: number[] = [];
  const end = performance.now() + forMs;
  while (performance.now() < end || rates.length < 5) {
    const from = performance.now();
    for (let i = 0; i < timesPerRound; i += 1) work();
    rates.push((timesPerRound * 1000) / (performance.now() - from));
  }
  rates.sort((a, b) => b - a);
  const best = rates.slice(0, Math.ceil(rates.length / 3));
  return best.reduce((sum, rate) => sum + rate, 0) / best.length;
}

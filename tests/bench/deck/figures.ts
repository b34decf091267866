import { type Figure, printFigures } from '../table.ts';
import { BANDS } from './bands.ts';
import { goalLines } from './goals.ts';
import { GRADES, type Grade } from './parameters.ts';
import { type DeckRun, type EstimatedVisit, firstOutcome, runDeck } from './run.ts';
import {
  errorPercent,
  FALSE_PERCENT,
  type Outcome,
  quantile,
  type Score,
  scoreOf,
  secondsTo,
} from './score.ts';
import { leanedFromTheStart } from './unknowable.ts';

/** How many step-ons of each grade are reported, and how many the baselines are tuned on. */
const REPORTED = 1700;
const TUNED = 400;
/** A baseline counts where it holds false no more often than this, as a share. */
const COUNTS = 0.02;

/** Measures the deck estimator beside the known methods and prints what came out, ratios first. */
export function deckFigures(): void {
  const run = runDeck(REPORTED, TUNED);
  printFigures(
    'Deck: time to hold after the last foot, against the quickest method that holds false at most 2 % of the time',
    GRADES.flatMap((grade) => ratios(run, grade)),
  );
  console.log('\nDeck: goals');
  for (const grade of GRADES) {
    const visits = run.ours.filter(({ visit }) => visit.grade === grade);
    // Rounding to a division is off by a quarter of it in the mean.
    const division =
      (25 * visits.reduce((sum, { visit }) => sum + visit.division / visit.truth, 0)) / visits.length;
    for (const text of goalLines(grade, scoreOf(visits.map(firstOutcome)), division))
      console.log(`  ${text}`);
  }
  console.log(
    `\nDeck: ${run.ours.length.toLocaleString('en-US')} step-ons; errors in % of the true weight, first hold`,
  );
  console.log(HEAD);
  for (const grade of GRADES) {
    console.log(`  ${grade}`);
    printScore('estimator', scoreOf(run.ours.map(firstOutcome).filter(of(grade))));
    printScore('estimator, need halved to 0.3 %', scoreOf(run.oursAtHalf.filter(of(grade))));
    for (const { method, setting, outcomes } of run.baselines)
      printScore(`${method.name} [${setting.join(', ')}]`, scoreOf(outcomes.filter(of(grade))));
  }
  console.log('\nDeck: the estimator by how coarse the scale is for the animal');
  console.log(HEAD);
  for (const grade of GRADES) {
    console.log(`  ${grade}`);
    const outcomes = run.ours.map(firstOutcome).filter(of(grade));
    for (const { name, has } of BANDS) printScore(name, scoreOf(outcomes.filter(({ visit }) => has(visit))));
  }
  console.log('\nDeck: the estimator by readings a second');
  console.log(HEAD);
  for (const hz of new Set(run.ours.map(({ visit }) => visit.hz).sort((a, b) => a - b)))
    printScore(`${hz} a second`, scoreOf(run.ours.map(firstOutcome).filter(({ visit }) => visit.hz === hz)));
  printCalibration(run.ours);
  printCauses(run.ours);
  printUnknowable(run.ours);
}

function of(grade: Grade): (outcome: Outcome) => boolean {
  return ({ visit }) => visit.grade === grade;
}

/** Three readings of "how much sooner": of those each held, of all animals, and of the animals both held. */
function ratios(run: DeckRun, grade: Grade): Figure[] {
  const ours = run.ours.map(firstOutcome).filter(of(grade));
  const score = scoreOf(ours);
  const rivals = run.baselines
    .map(({ method, outcomes }) => ({ method, outcomes: outcomes.filter(of(grade)) }))
    .map((rival) => ({ ...rival, score: scoreOf(rival.outcomes) }))
    .filter((rival) => rival.score.falseHolds <= COUNTS);
  const figures: Figure[] = [];
  const against = (name: string, theirs: Score) =>
    `${name} (p95 ${score.p95Error.toFixed(2)} % against ${theirs.p95Error.toFixed(2)} %, held ${percent(score.heldOfStanding)} against ${percent(theirs.heldOfStanding)})`;
  for (const [what, time] of [
    ['median of those held', (s: Score) => s.medianSeconds],
    ['half of all that stand 5 s held by', (s: Score) => s.halfHeldBy],
  ] as const) {
    const best = rivals.reduce<(typeof rivals)[number] | null>(
      (least, rival) => (least === null || time(rival.score) < time(least.score) ? rival : least),
      null,
    );
    // Where no method ever held half of the animals there is no time to compare with: the table says never.
    if (best === null || !Number.isFinite(time(best.score))) continue;
    figures.push({
      what: `${grade}: ${what}`,
      ratio: time(best.score) / time(score),
      against: against(best.method.name, best.score),
      raw: `${time(score).toFixed(2)} s against ${time(best.score).toFixed(2)} s`,
    });
  }
  for (const rival of rivals) figures.push(paired(grade, ours, rival.method.name, rival.outcomes));
  return figures;
}

/** The median times of two methods on the visits that both of them held. */
function paired(grade: Grade, ours: readonly Outcome[], name: string, theirs: readonly Outcome[]): Figure {
  const times = ours.flatMap(({ visit, taken }, i) => {
    const other = theirs[i]?.taken ?? null;
    return taken === null || other === null
      ? []
      : [[secondsTo(visit, taken.at), secondsTo(visit, other.at)] as const];
  });
  const median = (which: 0 | 1) =>
    quantile(
      times.map((pair) => pair[which]).sort((a, b) => a - b),
      0.5,
    );
  return {
    what: `${grade}: same animals, both held`,
    ratio: median(1) / median(0),
    against: name,
    raw: `${times.length} animals, ${median(0).toFixed(2)} s against ${median(1).toFixed(2)} s`,
  };
}

const COLUMNS = [
  'mean',
  'p95',
  'max',
  'bias',
  'median s',
  'half by s',
  'false',
  'hidden',
  'held 5 s',
  'refused',
];
const HEAD = `${''.padEnd(46)}${COLUMNS.map((name) => name.padStart(10)).join('')}`;

function printScore(name: string, score: Score): void {
  const cells = [
    score.meanError.toFixed(2),
    score.p95Error.toFixed(2),
    score.maxError.toFixed(1),
    score.bias.toFixed(2),
    score.medianSeconds.toFixed(2),
    Number.isFinite(score.halfHeldBy) ? score.halfHeldBy.toFixed(2) : 'never',
    percent(score.falseHolds),
    percent(score.hiddenFalse),
    percent(score.heldOfStanding),
    percent(score.refused),
  ];
  console.log(`    ${name.padEnd(42)}${cells.map((cell) => cell.padStart(10)).join('')}`);
}

/** How often a first hold lies within its own uncertainty, once and twice. */
function printCalibration(ours: readonly EstimatedVisit[]): void {
  console.log(
    '\nDeck: calibration, the share of first holds within once and twice their standard uncertainty (68 and 95 % due)',
  );
  for (const grade of GRADES) {
    const held = ours.filter(({ visit, estimated }) => visit.grade === grade && estimated.first !== null);
    const share = (of: (visit: EstimatedVisit) => number, k: number) =>
      percent(held.filter((one) => errorOf(one) <= k * of(one)).length / held.length);
    const motion = ({ estimated }: EstimatedVisit) => estimated.uncertainty;
    const whole = ({ estimated }: EstimatedVisit) => estimated.first?.uncertainty.value ?? 0;
    console.log(
      `  ${grade.padEnd(9)} motion and rounding ${share(motion, 1)}, ${share(motion, 2)}; with the scale's own limit, as logged ${share(whole, 1)}, ${share(whole, 2)}`,
    );
  }
}

function errorOf({ visit, estimated }: EstimatedVisit): number {
  return Math.abs((estimated.first?.mass.value ?? Number.NaN) - visit.truth);
}

/** What was going on at false holds, and how often a later hold was wrong. */
function printCauses(ours: readonly EstimatedVisit[]): void {
  console.log('\nDeck: what went on at false first holds (the second before), and later holds');
  for (const grade of GRADES) {
    const causes = new Map<string, number>();
    let [later, wrong, wrongAlone] = [0, 0, 0];
    for (const { visit, estimated } of ours.filter(({ visit }) => visit.grade === grade)) {
      const { first } = estimated;
      if (first !== null && Math.abs(errorPercent(visit, first.mass.value)) > FALSE_PERCENT) {
        const active = visit.spells.filter(
          ({ from, until }) => 1000 * from < first.at && 1000 * until > first.at - 1000,
        );
        const cause = active.map((spell) => spell.cause).join(' and ') || 'motion';
        causes.set(cause, (causes.get(cause) ?? 0) + 1);
      }
      for (const held of estimated.later) {
        later += 1;
        if (Math.abs(errorPercent(visit, held.mass.value)) <= FALSE_PERCENT) continue;
        wrong += 1;
        if (!visit.spells.some(({ cause }) => cause === 'second-animal')) wrongAlone += 1;
      }
    }
    const listed = [...causes].map(([cause, count]) => `${cause} ${count}`).join(', ') || 'none';
    console.log(
      `  ${grade.padEnd(9)} ${listed}; ${later} later holds, ${wrong} of them off, ${wrongAlone} of those with one animal`,
    );
  }
}

/** How many animals never showed their weight by a time after the last foot: a bound on any method that holds by then. */
function printUnknowable(ours: readonly EstimatedVisit[]): void {
  console.log(
    '\nDeck: leaned on something since before the last foot, of all that stand so long: whoever holds those is off',
  );
  for (const grade of GRADES) {
    const visits = ours.filter(({ visit }) => visit.grade === grade).map(({ visit }) => visit);
    const shares = [1, 1.5, 2, 3, 4].map(
      (seconds) => `after ${seconds} s ${percent(leanedFromTheStart(visits, seconds))}`,
    );
    console.log(`  ${grade.padEnd(9)} ${shares.join(', ')}`);
  }
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}

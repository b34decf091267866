import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ROOT } from '../../../server/launch/stamp.mjs';
import { type Figure, printFigures } from '../table.ts';
import { type Built, buildYears } from './build.ts';
import { checkLines } from './bulk.ts';
import { type Streamed, streamedApart } from './export-memory.ts';
import { type Measured, measureYears } from './measure.ts';

/** No screen should wait longer for the disk. */
const GOAL_MS = 5;
/**
 * The smaller file that each time is held against: the newest hundredth of the very same ten years, with the same 500
 * animals and as many rows a day. Fewer animals would make the herd's screens smaller too, and thinner years the pages
 * of an animal; so held against it a time tells what the rows that a screen does not show cost it. Where a screen has
 * fewer rows to show there all the same, the table says how many.
 */
const LITTLE = 0.01;
/** A line in so many is held against what the kiosk files. */
const LOOKED_AT = 251;
/** Enough of a file to show whether memory grows with it. */
const MOST_STREAMED = 200 * 1024 * 1024;
const MEGABYTE = 1024 * 1024;

/** Builds the newest share of ten years, and a hundredth of the whole, and prints what every screen takes. */
export function tenYearFigures(share: number): void {
  const folder = mkdtempSync(join(tmpdir(), 'ten-years-'));
  try {
    const [smallFile, wholeFile] = [join(folder, 'small.sqlite'), join(folder, 'whole.sqlite')];
    const little = buildYears(smallFile, LITTLE);
    checkLines(smallFile, LOOKED_AT);
    const built = buildYears(wholeFile, share);
    checkLines(wholeFile, LOOKED_AT);
    const small = measureYears(smallFile, LITTLE);
    const whole = measureYears(wholeFile, share);
    const title = `Ten years at ${share * 100} %`;
    printFigures(title, [...sizeFigures(built, little), ...screenFigures(small, whole)]);
    const kinds = ['register', 'weights', 'treatment-events', 'weight-events'] as const;
    printFigures(
      `${title}: files to take along`,
      kinds.map((kind) => streamFigure(kind, streamedApart(ROOT, wholeFile, kind, MOST_STREAMED))),
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export function sizeFigures(built: Built, little: Built): Figure[] {
  const count = (rows: number) => Math.round(rows).toLocaleString('en-US');
  return [
    {
      what: `a treatment on disk, of ${count(built.treatments)}`,
      ratio: built.bytesATreatment / little.bytesATreatment,
      against: `one of ${count(little.treatments)}`,
      raw: `${built.bytesATreatment.toFixed(0)} bytes a row, indexes and all`,
    },
    {
      what: `a weight on disk, of ${count(built.weighings)}`,
      ratio: built.bytesAWeighing / little.bytesAWeighing,
      against: `one of ${count(little.weighings)}`,
      raw: `${built.bytesAWeighing.toFixed(0)} bytes a row; file ${(built.bytes / 2 ** 30).toFixed(2)} GiB, built in ${built.seconds.toFixed(0)} s`,
    },
  ];
}

export function screenFigures(small: Measured, whole: Measured): Figure[] {
  const start: Figure = {
    what: 'start of the kiosk until its first state',
    ratio: whole.startMs / small.startMs,
    against: 'the same at 1 %',
    raw: `${whole.startMs.toFixed(0)} ms, at 1 % ${small.startMs.toFixed(0)} ms`,
  };
  const screens = [...whole.screens].map(([what, { p50, p99, rows }]): Figure => {
    const little = small.screens.get(what);
    if (little === undefined) throw new Error(`"${what}" was not measured at 1 %`);
    const goal = p99 <= GOAL_MS ? '' : `, past the goal of ${GOAL_MS} ms`;
    const unlike =
      Math.abs(rows - little.rows) < 0.05
        ? ''
        : `, ${rows.toFixed(1)} rows against ${little.rows.toFixed(1)}`;
    return {
      what,
      ratio: p50 / little.p50,
      against: 'its median at 1 %',
      raw: `p50 ${p50.toFixed(2)} ms, p99 ${p99.toFixed(2)} ms, at 1 % ${little.p50.toFixed(2)} and ${little.p99.toFixed(2)} ms${goal}${unlike}`,
    };
  });
  return [start, ...screens];
}

export function streamFigure(kind: string, { bytes, seconds, atFirst, most }: Streamed): Figure {
  const mb = (size: number) => (size / MEGABYTE).toFixed(0);
  return {
    what: `${kind}: most memory held while streaming`,
    ratio: most / atFirst,
    against: 'that at its first MB',
    raw: `RSS ${mb(most)} MB, first ${mb(atFirst)} MB; ${mb(bytes)} MB in ${seconds.toFixed(0)} s`,
  };
}

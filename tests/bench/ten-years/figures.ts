import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Database } from '../../../server/store/sqlite.ts';
import { type Figure, printFigures } from '../table.ts';
import { type Built, buildYears } from './build.ts';
import { checkLines } from './bulk.ts';
import { type Streamed, streamedApart } from './export-memory.ts';
import { type Asked, measureYears, startOf, type Timed, type YearsFile } from './measure.ts';

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
export async function tenYearFigures(share: number): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'ten-years-'));
  try {
    const small = { path: join(folder, 'small.sqlite'), share: LITTLE };
    const whole = { path: join(folder, 'whole.sqlite'), share };
    const [little, built] = [builtAndChecked(small), builtAndChecked(whole)];
    const title = `Ten years at ${share * 100} %`;
    printFigures(title, [
      ...sizeFigures(built, little),
      startFigure(small, whole),
      checkFigure(small, whole),
      ...screenFigures(measureYears(small, whole)),
    ]);
    const kinds = ['register', 'weights', 'treatment-events', 'weight-events'] as const;
    const streamed: Figure[] = [];
    for (const kind of kinds)
      streamed.push(streamFigure(kind, await streamedApart(whole.path, kind, MOST_STREAMED)));
    printFigures(`${title}: files to take along`, streamed);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function sizeFigures(built: Built, little: Built): Figure[] {
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

function builtAndChecked({ path, share }: YearsFile): Built {
  const built = buildYears(path, share);
  checkLines(path, LOOKED_AT);
  return built;
}

function startFigure(small: YearsFile, whole: YearsFile): Figure {
  const [littleMs, wholeMs] = [startOf(small), startOf(whole)];
  return {
    what: 'start of the kiosk until its first state',
    ratio: wholeMs / littleMs,
    against: 'the same at 1 %',
    raw: `${wholeMs.toFixed(0)} ms, at 1 % ${littleMs.toFixed(0)} ms`,
  };
}

/** The daily check runs in a thread of its own; what it takes is how long the disk is read for it. */
function checkFigure(small: YearsFile, whole: YearsFile): Figure {
  const [littleMs, wholeMs] = [quickCheckOf(small.path), quickCheckOf(whole.path)];
  return {
    what: 'the quick check of the database',
    ratio: wholeMs / littleMs,
    against: 'the same at 1 %',
    raw: `${(wholeMs / 1000).toFixed(1)} s, at 1 % ${(littleMs / 1000).toFixed(2)} s`,
  };
}

function quickCheckOf(path: string): number {
  const db = new Database(path, { readonly: true });
  const from = performance.now();
  const said = db.pragma('quick_check', { simple: true });
  const took = performance.now() - from;
  db.close();
  if (said !== 'ok') throw new Error(`the bench made a file that is not whole: ${said}`);
  return took;
}

function screenFigures(asked: readonly Asked[]): Figure[] {
  return asked.map(({ what, small, whole }) => {
    const goal = whole.p99 <= GOAL_MS ? '' : `, past the goal of ${GOAL_MS} ms`;
    const alike = Math.abs(whole.rows - small.rows) < 0.05;
    const rows = alike ? '' : `, ${whole.rows.toFixed(1)} rows against ${small.rows.toFixed(1)}`;
    const at = ({ p50, p99 }: Timed) => `p50 ${p50.toFixed(2)} and p99 ${p99.toFixed(2)} ms`;
    return {
      what,
      ratio: whole.p50 / small.p50,
      against: 'its median at 1 %',
      raw: `${at(whole)}, at 1 % ${at(small)}${goal}${rows}`,
    };
  });
}

function streamFigure(kind: string, { bytes, seconds, atFirst, most }: Streamed): Figure {
  const mb = (size: number) => (size / MEGABYTE).toFixed(0);
  return {
    what: `${kind}: most memory held while streaming`,
    ratio: most / atFirst,
    against: 'that at its first MB',
    raw: `RSS ${mb(most)} MB, first ${mb(atFirst)} MB; ${mb(bytes)} MB in ${seconds.toFixed(0)} s`,
  };
}

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Figure, printFigures } from '../table.ts';
import { type Built, buildYears } from './build.ts';
import { type Measured, measureYears } from './measure.ts';

/** No screen should wait longer for the disk. */
const GOAL_MS = 5;
/** The smaller file that each time is held against. */
const LITTLE = 0.01;

/** Builds a share of ten years and a hundredth of it in a temporary folder, and prints what every screen takes. */
export function tenYearFigures(share: number): void {
  const folder = mkdtempSync(join(tmpdir(), 'ten-years-'));
  try {
    const [smallFile, wholeFile] = [join(folder, 'small.sqlite'), join(folder, 'whole.sqlite')];
    buildYears(smallFile, share * LITTLE);
    const built = buildYears(wholeFile, share);
    const small = measureYears(smallFile);
    const whole = measureYears(wholeFile);
    printFigures(`Ten years at ${share * 100} %`, [...sizeFigures(built), ...screenFigures(small, whole)]);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function sizeFigures(built: Built): Figure[] {
  const count = (rows: number) => Math.round(rows).toLocaleString('en-US');
  return [
    {
      what: `a treatment on disk, of ${count(built.treatments)}`,
      ratio: built.bytesATreatment / 4096,
      against: 'a page of the file',
      raw: `${built.bytesATreatment.toFixed(0)} bytes a row, indexes and all`,
    },
    {
      what: `a weight on disk, of ${count(built.weighings)}`,
      ratio: built.bytesAWeighing / 4096,
      against: 'a page of the file',
      raw: `${built.bytesAWeighing.toFixed(0)} bytes a row; file ${(built.bytes / 2 ** 30).toFixed(2)} GiB, built in ${built.seconds.toFixed(0)} s`,
    },
  ];
}

function screenFigures(small: Measured, whole: Measured): Figure[] {
  const start: Figure = {
    what: 'start of the kiosk until its first state',
    ratio: whole.startMs / small.startMs,
    against: 'the same at 1 %',
    raw: `${whole.startMs.toFixed(0)} ms, at 1 % ${small.startMs.toFixed(0)} ms`,
  };
  const screens = [...whole.screens].map(([what, { p50, p99 }]): Figure => {
    const little = small.screens.get(what);
    if (little === undefined) throw new Error(`"${what}" was not measured at 1 %`);
    const goal = p99 <= GOAL_MS ? '' : `, past the goal of ${GOAL_MS} ms`;
    return {
      what,
      ratio: p50 / little.p50,
      against: 'its median at 1 %',
      raw: `p99 ${p99.toFixed(2)} ms, at 1 % ${little.p99.toFixed(2)} ms${goal}`,
    };
  });
  return [start, ...screens];
}

import { monitorEventLoopDelay } from 'node:perf_hooks';
import { UNASKED } from '../../server/herd/herd-file.ts';
import { herdCsv } from '../server/make/herd-csv.ts';
import { testBarn } from '../server/make/test-barn.ts';
import type { Figure } from './table.ts';

const ROWS = 100_000;
/** No scale and no screen should wait longer for a file that is read. */
const GOAL_MS = 50;

/** A herd file of 100,000 rows with 1 % broken: how long others wait while it is read, and while it is written. */
export async function herdFileFigures(): Promise<Figure[]> {
  const barn = testBarn();
  const { csv, broken } = herdCsv(ROWS);
  const bytes = Buffer.from(csv);
  const { herdFile } = barn.barn.context;
  const delay = monitorEventLoopDelay({ resolution: 1 });
  delay.enable();
  const began = performance.now();
  await herdFile.take('bench.csv', bytes, {
    sayings: UNASKED,
    herd: barn.barn.context.memory.animals,
  });
  const readMs = performance.now() - began;
  delay.disable();
  const stage = herdFile.stage();
  if (stage.step !== 'ready' || stage.preview.good.length !== ROWS - broken)
    throw new Error(`the file was not previewed whole: ${stage.step}`);
  const wrote = performance.now();
  if (!barn.send({ type: 'import-accept', preview: stage.id }).ok) throw new Error('it was not taken in');
  const writeMs = performance.now() - wrote;
  const waitMs = delay.max / 1e6;
  const goal = `the goal of ${GOAL_MS} ms`;
  return [
    {
      what: `herd file, ${ROWS.toLocaleString('en-US')} rows: longest wait while read`,
      ratio: GOAL_MS / waitMs,
      against: goal,
      raw: `${waitMs.toFixed(0)} ms, read in ${(readMs / 1000).toFixed(1)} s`,
    },
    {
      what: 'the same: wait while written, one transaction',
      ratio: GOAL_MS / writeMs,
      against: goal,
      raw: `${writeMs.toFixed(0)} ms`,
    },
  ];
}

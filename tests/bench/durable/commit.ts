import { closeSync, fdatasyncSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { median } from '../../../core/statistics/moments.ts';
import { GOAT, testBarn } from '../../server/make/test-barn.ts';
import type { Figure } from '../table.ts';
import { bytesWritten } from './io.ts';

const TIMES = 300;
/** What an intent may take until it is on the disk, in bare appends of as many bytes (the goal of this project). */
const GOAL = 2;

/**
 * From an intent to its being on the disk, against a bare append of as many bytes with a wait for the disk: one of one and
 * one of the other in turn, so that whatever else the disk does falls on both alike.
 */
export function commitFigures(): Figure[] {
  const folder = mkdtempSync(join(tmpdir(), 'bench-commit-'));
  const kiosk = testBarn(join(folder, 'kiosk.sqlite'));
  const bare = openSync(join(folder, 'bare'), 'a');
  const took: { intent: number[]; append: number[]; bytes: number[] } = { intent: [], append: [], bytes: [] };
  try {
    for (let i = 0; i < TIMES; i += 1) {
      const before = bytesWritten();
      const from = performance.now();
      const answer = kiosk.send({ type: 'note-animal', animalId: GOAT.id, note: 'lame' });
      took.intent.push(performance.now() - from);
      if (!answer.ok) throw new Error(`the intent was refused: ${answer.code}`);
      const bytes = bytesWritten() - before;
      took.bytes.push(bytes);
      const same = Buffer.alloc(bytes, i);
      const begun = performance.now();
      writeSync(bare, same);
      fdatasyncSync(bare);
      took.append.push(performance.now() - begun);
    }
  } finally {
    closeSync(bare);
    kiosk.store.close();
    rmSync(folder, { recursive: true });
  }
  const [intent, append] = [median(took.intent), median(took.append)];
  const past = intent / append > GOAL ? `, past the goal of ${GOAL}` : '';
  return [
    {
      what: 'an intent until it is on the disk, median',
      ratio: intent / append,
      against: 'a bare append of as many bytes',
      raw: `${intent.toFixed(2)} ms, bare ${append.toFixed(2)} ms; ${median(took.bytes)} bytes${past}`,
    },
  ];
}

import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { seededRandom } from '../../hardware/simulator/random.ts';
import { createStore } from '../../server/store/store.ts';
import { reckon } from './books.ts';
import { databaseOf, farmFolder, kill, startOn } from './farm.ts';
import type { Ledger } from './ledger.ts';
import { afterPowerCut } from './power-cut.ts';
import { begin, learnKids, work } from './round.ts';
import { buildShim, type DiskWrite, shimOver } from './shim.ts';

const shim = buildShim();
/** How many power cuts are tried, spread over the work at random. */
const CUTS = 12;
/** How long the kiosk is let work, in milliseconds. */
const WORK_MS = 2500;

/** Work of a kiosk with each write that reached its files, and what it had acknowledged when. */
interface Recorded {
  readonly file: string;
  readonly begun: Map<string, Buffer>;
  readonly writes: readonly DiskWrite[];
  readonly ledger: Ledger;
}

async function record(library: string): Promise<Recorded> {
  const folder = farmFolder();
  const file = databaseOf(folder);
  const begun = new Map([[file, readFileSync(file)]]);
  const behind = shimOver(library, file);
  const kiosk = await startOn(folder, behind.env);
  const ledger: Ledger = new Map();
  const jugId = await begin(kiosk.base, ledger);
  const kids = await learnKids(kiosk.base, ledger, jugId);
  const working = work(kiosk.base, ledger, jugId, kids);
  await new Promise((resolve) => setTimeout(resolve, WORK_MS));
  await kill(kiosk);
  await working;
  // The index of the log is made anew after a crash: it is not of the disk.
  const writes = behind.writes().filter(({ path }) => !path.endsWith('-shm'));
  return { file, begun, writes, ledger };
}

/** The disk after the power went at one of the writes, held against what was acknowledged before. */
function cutAt({ file, begun, writes, ledger }: Recorded, index: number, seed: number, honest: boolean) {
  const folder = mkdtempSync(join(tmpdir(), 'power-'));
  const left = afterPowerCut(begun, writes.slice(0, index), { honest, random: seededRandom(seed) });
  for (const [path, bytes] of left) writeFileSync(join(folder, basename(path)), bytes);
  const instant = writes[index]?.at ?? 0n;
  const heard: Ledger = new Map(
    [...ledger].filter(([, { knownAt }]) => knownAt !== null && knownAt < instant),
  );
  const copy = join(folder, basename(file));
  try {
    createStore(copy).close();
    return { heard: heard.size, ...reckon(copy, heard, false) };
  } catch (error) {
    return { heard: heard.size, lost: [], miscounted: [], halves: [`it does not open: ${error}`] };
  }
}

describe.skipIf(shim === null)('when the power goes', () => {
  let recorded: Recorded;
  beforeAll(async () => {
    recorded = await record(shim ?? '');
  }, 120_000);

  test('at any write, nothing that was acknowledged is lost and nothing is half there', () => {
    const random = seededRandom(7);
    const { writes } = recorded;
    let heard = 0;
    for (let n = 0; n < CUTS; n += 1) {
      const index = Math.floor(random() * writes.length);
      const found = cutAt(recorded, index, n, true);
      heard = Math.max(heard, found.heard);
      expect({ index, ...found }).toMatchObject({ lost: [], miscounted: [], halves: [] });
    }
    // Else nothing was at stake.
    expect(heard).toBeGreaterThan(5);
  });

  test('under a disk that lies about being done, this test would see it', () => {
    const random = seededRandom(8);
    const { writes } = recorded;
    const harmed = Array.from({ length: 10 }, (_, n) => {
      const index = Math.floor((0.5 + 0.5 * random()) * writes.length);
      const { lost, halves } = cutAt(recorded, index, n, false);
      return lost.length + halves.length;
    }).filter((count) => count > 0);
    expect(harmed.length).toBeGreaterThan(5);
  });
});

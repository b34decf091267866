import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Database } from '../../../server/store/sqlite.ts';
import { runApart } from '../apart.ts';
import type { Figure } from '../table.ts';
import { buildYears } from '../ten-years/build.ts';
import type { GivenAway } from './kiosk-apart.ts';

/** Shares of the ten years whose events come to a million, and to a tenth of that: fewer do not fill SQLite's cache of pages. */
const MANY = 0.0893;
const FEW = MANY / 10;

/** What a kiosk takes that has a million events to tell, against one that has a tenth of them. */
export async function waitingFigures(): Promise<Figure[]> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-waiting-'));
  try {
    const [few, many] = [await measured(folder, FEW), await measured(folder, MANY)];
    const count = (events: number) => events.toLocaleString('en-US');
    const mb = (size: number) => `${size.toFixed(0)} MB`;
    return [
      {
        what: 'most memory of a kiosk that pushes what waited',
        ratio: many.pushed.mostMb / few.pushed.mostMb,
        against: `the same with ${count(few.pushed.events)} events`,
        raw: `${mb(many.pushed.mostMb)} with ${count(many.pushed.events)}, ${mb(few.pushed.mostMb)}; after the first batch ${mb(many.pushed.firstMb)}; ${(many.pushed.events / many.pushed.seconds).toFixed(0)}/s to a hub that costs nothing`,
      },
      {
        what: 'most descriptors of the same',
        ratio: many.pushed.mostDescriptors / few.pushed.mostDescriptors,
        against: 'the same with few',
        raw: `${many.pushed.mostDescriptors}, at first ${many.pushed.firstDescriptors}`,
      },
      {
        what: 'most memory while all of them are told first',
        ratio: many.begun.openMb / few.begun.openMb,
        against: 'the same with few',
        raw: `${mb(many.begun.openMb)} in ${many.begun.openSeconds.toFixed(1)} s, ${mb(few.begun.openMb)} in ${few.begun.openSeconds.toFixed(1)} s: a file of years that had told nothing is opened`,
      },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function measured(folder: string, share: number) {
  const path = join(folder, `${share}.sqlite`);
  buildYears(path, share);
  const pushed = await giveAwayApart(path);
  forgetEvents(path);
  return { pushed, begun: await giveAwayApart(path) };
}

const giveAwayApart = (path: string) => runApart<GivenAway>('hub/kiosk-apart.ts', 'giveAway', [path]).done;

/** Makes a file one of a kiosk that never told of its records, as before it was brought up to date. */
function forgetEvents(path: string): void {
  const db = new Database(path);
  const rules = db
    .prepare<[], { name: string; sql: string }>(
      "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = 'events'",
    )
    .all();
  for (const { name } of rules) db.exec(`DROP TRIGGER ${name}`);
  db.exec('DELETE FROM events; DELETE FROM kiosk_self; DELETE FROM kiosk_lives;');
  for (const { sql } of rules) db.exec(sql);
  db.close();
}

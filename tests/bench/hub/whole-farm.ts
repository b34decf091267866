import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { invite } from '../../../server/hub/credentials.ts';
import { runApart } from '../apart.ts';
import { residentMb } from '../of-process.ts';
import type { Figure } from '../table.ts';
import { TEN_YEARS } from '../ten-years/years.ts';
import { copyIn } from './copy-in.ts';
import type { TakenIn } from './kiosk-apart.ts';
import { besideHub, type RunningHub } from './machines.ts';
import { eventsOfYears } from './years-told.ts';

/** Of ten years of a large herd so much is shared where nobody says how much. */
export const USUAL_SHARE = 0.01;
const FARM = 'ten-years';

/**
 * A new kiosk takes in years of a farm through the hub, is killed halfway, and goes on from what it holds. The hub's log is
 * written past it by COPY.
 */
export async function wholeFarmFigures(hub: RunningHub, share = USUAL_SHARE): Promise<Figure[]> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-farm-'));
  try {
    const database = await besideHub(hub);
    const invitation = await invite(database, FARM, 'South shed', { hub: hub.address, ca: null });
    await database.close();
    const { events, seconds } = await copyIn(hub, invitation, eventsOfYears(share));
    const before = residentMb(hub.pid);
    const fresh = join(folder, 'new.sqlite');
    await killedAt(fresh, invitation, events / 2);
    const taken = await runApart<TakenIn>('hub/kiosk-apart.ts', 'takeAll', [fresh, invitation]).done;
    if (taken.held !== events || taken.waiting > 0)
      throw new Error(`of ${events} events ${taken.held} are held, and ${taken.waiting} wait`);
    const count = (many: number) => many.toLocaleString('en-US');
    const rate = (many: number, took: number) => `${count(Math.round(many / took))}/s`;
    const size = (mb: number) => `${count(Math.round(mb))} MB`;
    const years = `${share * 100} % of ten years of ${TEN_YEARS.animals} animals`;
    return [
      {
        what: 'events that came again after a kill halfway',
        ratio: (taken.before + taken.came - events) / events,
        against: 'all of them',
        raw: `${count(taken.before)} held when it was started again, ${count(taken.came)} came after, of ${count(events)}; ${years}`,
      },
      {
        what: 'most memory of the kiosk that takes them in',
        ratio: taken.mostMb / taken.settledMb,
        against: 'that once the cache of pages was full',
        raw: `${size(taken.mostMb)}, ${size(taken.settledMb)} after 30,000 events; ${rate(taken.came, taken.seconds)} taken in and on the disk; a file of ${size(taken.fileMb)} in the end`,
      },
      {
        what: 'memory of the hub after the pull',
        ratio: residentMb(hub.pid) / before,
        against: 'that before it',
        raw: `${size(residentMb(hub.pid))}, ${size(before)} before; its log written by COPY at ${rate(events, seconds)}`,
      },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Lets a new kiosk take events in until it says that it holds so many, and kills it. */
function killedAt(path: string, invitation: object, many: number): Promise<void> {
  return new Promise((resolve, reject) => {
    let killed = false;
    const apart = runApart<TakenIn>('hub/kiosk-apart.ts', 'takeAll', [path, invitation], (line) => {
      if (killed || Number(/^held (\d+)$/.exec(line)?.[1] ?? 0) < many) return;
      killed = true;
      apart.kill().then(resolve, reject);
    });
    apart.done.then(() => reject(new Error('it took everything in before it was killed'))).catch(() => {});
  });
}

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { invite } from '../../../server/hub/credentials.ts';
import { runApart } from '../apart.ts';
import { residentMb } from '../of-process.ts';
import type { Figure } from '../table.ts';
import { buildYears } from '../ten-years/build.ts';
import type { GivenAway, TakenIn } from './kiosk-apart.ts';
import { besideHub, type RunningHub } from './machines.ts';

/** Of ten years of a large herd so much is shared: what a part costs does not depend on how many there are. */
const SHARE = 0.005;
const FARM = 'ten-years';

/** A new kiosk takes in years of a farm through the hub, is killed halfway, and goes on from what it holds. */
export async function wholeFarmFigures(hub: RunningHub): Promise<Figure[]> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-farm-'));
  try {
    const database = await besideHub(hub);
    const [north, south] = [
      await invite(database, FARM, 'North shed', { hub: hub.address, ca: null }),
      await invite(database, FARM, 'South shed', { hub: hub.address, ca: null }),
    ];
    await database.close();
    const old = join(folder, 'old.sqlite');
    const { treatments, weighings } = buildYears(old, SHARE);
    const given = await runApart<GivenAway>('hub/kiosk-apart.ts', 'giveAway', [old, north]).done;
    const before = residentMb(hub.pid);
    const fresh = join(folder, 'new.sqlite');
    await killedAt(fresh, south, given.events / 2);
    const taken = await runApart<TakenIn>('hub/kiosk-apart.ts', 'takeAll', [fresh, south]).done;
    if (taken.held !== given.events || taken.waiting > 0)
      throw new Error(`of ${given.events} events ${taken.held} are held, and ${taken.waiting} wait`);
    const rate = (events: number, seconds: number) => `${(events / seconds).toFixed(0)}/s`;
    const rows = `${treatments} treatments, ${weighings} weights: ${SHARE * 100} % of ten years of 500 animals`;
    return [
      {
        what: 'events that came again after a kill halfway',
        ratio: (taken.before + taken.came - given.events) / given.events,
        against: 'all of them',
        raw: `${taken.before} held when it was started again, ${taken.came} came after, of ${given.events}; ${rows}`,
      },
      {
        what: 'most memory of the kiosk that takes them in',
        ratio: taken.mostMb / taken.firstMb,
        against: 'that after the first part',
        raw: `${taken.mostMb.toFixed(0)} MB, ${taken.firstMb.toFixed(0)} MB at first; ${rate(taken.came, taken.seconds)} taken in and on the disk, ${rate(given.events, given.seconds)} pushed before`,
      },
      {
        what: 'memory of the hub after the pull',
        ratio: residentMb(hub.pid) / before,
        against: 'that before it',
        raw: `${residentMb(hub.pid).toFixed(0)} MB, ${before.toFixed(0)} MB before`,
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

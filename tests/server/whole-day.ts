import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { newcomer } from '../../core/herd/herd-animal.ts';
import { HOUR_MS } from '../../core/moment.ts';
import { Publisher } from '../../server/routes/publisher.ts';
import type { Store } from '../../server/store/store.ts';
import { stateView } from '../../server/view/state-view.ts';
import { quietStanding } from './make/quiet.ts';
import { furnishShed, GOAT, standingOffer, testBarn } from './make/test-barn.ts';

/** What a working day, lived faster than it passes, came to. */
export interface DayReport {
  readonly hours: number;
  /** How many times faster than it passes it was lived. */
  readonly speedUp: number;
  readonly readings: number;
  readonly doses: number;
  readonly patches: number;
  readonly failures: readonly string[];
  /** The first of its quarters, and the last. */
  readonly first: Quarter;
  readonly last: Quarter;
}

/** How the kiosk stood in a quarter of the day. */
export interface Quarter {
  /** What it held once garbage was collected, at the end of the quarter. */
  readonly heapMb: number;
  readonly descriptors: number;
  /** What a second of readings and a patch took: half took no longer, and 99 of 100. */
  readonly p50Ms: number;
  readonly p99Ms: number;
}

/** An animal comes so often: at its rush, a keeper alone gets no more through. */
const VISIT_EVERY_MS = 150_000;
/** A jug is mixed anew so often. */
const JUG_EVERY_MS = 8 * HOUR_MS;
const QUARTERS = 4;

/**
 * Lives hours of a barn: readings at 10 Hz, an animal dosed every two and a half minutes, a screen told every second, on a
 * real database. Time is moved by hand, so nothing is waited for but the work itself.
 */
export function liveHours(hours: number): DayReport {
  const folder = mkdtempSync(join(tmpdir(), 'whole-day-'));
  const visits = Math.floor((hours * HOUR_MS) / VISIT_EVERY_MS);
  const kiosk = testBarn(join(folder, 'day.sqlite'), (store) => furnish(store, visits, hours));
  const { context } = kiosk.barn;
  const standing = quietStanding(context);
  const publisher = new Publisher(() => stateView(context, standing), kiosk.barn.revision);
  const counts = { readings: 0, doses: 0, patches: 0 };
  publisher.add({ backlog: 0, send: () => (counts.patches += 1) });
  let times: number[] = [];
  const quarters: Quarter[] = [];
  const began = performance.now();

  /** Lets time pass with a weight on the platform, a second at a time. */
  const pass = (weight: number, ms: number) => {
    for (let passed = 0; passed < ms; passed += 1000) {
      const from = performance.now();
      kiosk.weigh(weight, 1000);
      kiosk.barn.tick();
      publisher.flush(kiosk.clock.uptimeMs);
      times.push(performance.now() - from);
      counts.readings += 10;
    }
  };
  const must = (wish: Parameters<typeof kiosk.send>[0]) => {
    const answer = kiosk.send(wish);
    if (!answer.ok) throw new Error(`${wish.type} was refused: ${answer.code}`);
  };

  try {
    let jug = -1;
    for (let visit = 0; visit < visits; visit += 1) {
      const due = Math.floor((visit * VISIT_EVERY_MS) / JUG_EVERY_MS);
      if (due !== jug) {
        jug = due;
        if (jug > 0) must({ type: 'put-jug-down' });
        must({ type: 'take-jug', jugId: jugIdOf(jug) });
        must({ type: 'prove-jug', jugId: jugIdOf(jug), deliberate: true });
      }
      pass(0, 2000);
      must({ type: 'pick-animal', animalId: animalIdOf(visit) });
      pass(15_400, 5000);
      must({ type: 'give', offerId: standingOffer(kiosk).id, outcome: 'whole' });
      counts.doses += 1;
      pass(15_400, 3000);
      pass(0, VISIT_EVERY_MS - 10_000);
      if (Math.floor(((visit + 1) * QUARTERS) / visits) > quarters.length) {
        quarters.push(quarterOf(times));
        times = [];
      }
    }
    const [first, last] = [quarters[0], quarters.at(-1)];
    if (first === undefined || last === undefined) throw new Error('the day was too short to have quarters');
    const speedUp = (visits * VISIT_EVERY_MS) / (performance.now() - began);
    return { hours, speedUp, ...counts, failures: kiosk.failures, first, last };
  } finally {
    kiosk.store.close();
    rmSync(folder, { recursive: true });
  }
}

const animalIdOf = (visit: number) => `goat-${visit}`;
const jugIdOf = (jug: number) => (jug === 0 ? 'jug-1' : `jug-${jug + 1}`);

/** An animal for each visit, since none is dosed twice a day; and a jug for each eight hours, good for longer. */
function furnish(store: Store, visits: number, hours: number): void {
  store.whole(() => {
    for (let visit = 0; visit < visits; visit += 1)
      store.animals.add(newcomer({ ...GOAT, id: animalIdOf(visit), name: `G ${visit}`, tag: null }), 'Wren');
  });
  furnishShed(store);
  const first = store.jugs.find(jugIdOf(0));
  if (first === undefined) throw new Error('the shed has no jug');
  for (let jug = 1; jug * JUG_EVERY_MS < hours * HOUR_MS; jug += 1) {
    const later = jug * JUG_EVERY_MS;
    const { mixedAtMs, useByMs } = first;
    store.jugs.add({
      ...first,
      id: jugIdOf(jug),
      number: jug + 1,
      mixedAtMs: mixedAtMs + later,
      useByMs: useByMs + later,
    });
  }
}

function quarterOf(times: number[]): Quarter {
  times.sort((a, b) => a - b);
  const at = (share: number) => times[Math.floor(share * (times.length - 1))] ?? Number.NaN;
  setFlagsFromString('--expose-gc');
  runInNewContext('gc')();
  return {
    heapMb: process.memoryUsage().heapUsed / 2 ** 20,
    descriptors: readdirSync('/proc/self/fd').length,
    p50Ms: at(0.5),
    p99Ms: at(0.99),
  };
}

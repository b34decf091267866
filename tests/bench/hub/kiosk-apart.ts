import { statSync } from 'node:fs';
import { type HubLine, pullOnce, pushLacking } from '../../../core/hub/exchange.ts';
import type { Invitation } from '../../../server/hub/wire.ts';
import { createHolder } from '../../../server/sync/holder.ts';
import { openHubLine } from '../../../server/sync/line.ts';
import { furnishShed, testBarn } from '../../server/make/test-barn.ts';
import { residentMb } from '../of-process.ts';
import { END_MS } from '../ten-years/years.ts';
import { descriptors } from './machines.ts';

/** How a process stood that gave away all that waited in a kiosk's file. */
export interface GivenAway {
  readonly events: number;
  /** Seconds until the file was open, and the most memory that took, in MB. */
  readonly openSeconds: number;
  readonly openMb: number;
  /** Seconds until all was given away; resident MB and descriptors after the first batch, and the most there ever were. */
  readonly seconds: number;
  readonly firstMb: number;
  readonly mostMb: number;
  readonly firstDescriptors: number;
  readonly mostDescriptors: number;
}

/** Memory is looked at after so many parts, once it was swept: what merely waits to be swept is not held. */
const LOOKED_AT = 20;

function sweptMb(): number {
  globalThis.gc?.();
  // The pages one sweep empties are given back by the next.
  globalThis.gc?.();
  return residentMb();
}

/** Opens a kiosk's file and pushes what waits there to a hub that takes everything. */
export async function giveAway(path: string): Promise<GivenAway> {
  const began = performance.now();
  const { barn, store } = testBarn(path);
  const openSeconds = (performance.now() - began) / 1000;
  const openMb = process.resourceUsage().maxRSS / 1024;
  const seen: { mb: number; descriptors: number }[] = [];
  const events = store.received.held().reduce((sum, { head }) => sum + head, 0);
  let pushed = 0;
  const watched: HubLine = {
    ...TAKES_ALL,
    async push(batch) {
      const answer = await TAKES_ALL.push(batch);
      if (pushed++ % LOOKED_AT === 0) seen.push({ mb: sweptMb(), descriptors: descriptors() });
      return answer;
    },
  };
  const from = performance.now();
  await pushLacking(createHolder(barn), watched, new Map());
  store.close();
  return {
    events,
    openSeconds,
    openMb,
    seconds: (performance.now() - from) / 1000,
    firstMb: seen[0]?.mb ?? 0,
    mostMb: Math.max(...seen.map(({ mb }) => mb)),
    firstDescriptors: seen[0]?.descriptors ?? 0,
    mostDescriptors: Math.max(...seen.map((each) => each.descriptors)),
  };
}

const TAKES_ALL: HubLine = {
  push: async ({ events }) => ({ ok: true, head: events.at(-1)?.sequence ?? 0 }),
  pull: async () => ({ events: [], heads: new Map(), parted: [] }),
  idAt: async () => null,
};

/** On a busy machine the hub may be slow to answer: the kiosk asks again, as it does at work. */
export async function untilItGoes<T>(work: () => Promise<T>): Promise<T> {
  for (let tries = 1; ; tries += 1) {
    try {
      return await work();
    } catch (error) {
      if (tries === 20) throw error;
      await new Promise((resolve) => setTimeout(resolve, 500));
    }
  }
}

/** How a process stood that took in all a hub held of a farm. */
export interface TakenIn {
  /** Events of others that were held when it began, that came, and that were held in the end. */
  readonly before: number;
  readonly came: number;
  readonly held: number;
  readonly waiting: number;
  readonly seconds: number;
  /** Resident MB once the pages SQLite keeps in memory are full, and the most there ever were. */
  readonly settledMb: number;
  readonly mostMb: number;
  /** Size of the kiosk's file in the end, in MB. */
  readonly fileMb: number;
}

/** SQLite's cache of pages is full after so many events: from there on memory must not grow. */
const SETTLED = 30_000;

/** Takes in all a hub holds into a kiosk's file, and prints how many are held after each part. */
export async function takeAll(path: string, invitation: Invitation): Promise<TakenIn> {
  const { barn, store, clock } = testBarn(path, furnishShed);
  clock.wallMs = END_MS;
  const { kiosk } = store.events.self();
  const line = openHubLine({ invitation, kiosk, named: () => {} });
  const holder = createHolder(barn);
  const seen: { came: number; mb: number }[] = [];
  const from = performance.now();
  let [came, parts] = [0, 0];
  const held = () =>
    store.received.held().reduce((sum, each) => sum + (each.kiosk === kiosk ? 0 : each.head), 0);
  const before = held();
  for (;;) {
    const { events } = await untilItGoes(() => pullOnce(holder, line, 0));
    if (events.length === 0) break;
    came += events.length;
    if (parts++ % LOOKED_AT === 0) seen.push({ came, mb: sweptMb() });
    console.log(`held ${held()}`);
  }
  const seconds = (performance.now() - from) / 1000;
  line.close();
  const waiting = store.received.waiting();
  const all = held();
  store.close();
  const settled = seen.find((each) => each.came >= SETTLED) ?? seen.at(-1);
  const mostMb = Math.max(...seen.map(({ mb }) => mb));
  const fileMb = statSync(path).size / 2 ** 20;
  return { before, came, held: all, waiting, seconds, settledMb: settled?.mb ?? 0, mostMb, fileMb };
}

import { afterEach, expect, test } from 'vitest';
import { WebSocket } from 'ws';
import type { KioskProcess } from '../process/kiosk-process.ts';
import { reckon } from './books.ts';
import { databaseOf, farmFolder, kill, startOn } from './farm.ts';
import { acknowledged, type Ledger } from './ledger.ts';
import { begin, give, learnKids, work } from './round.ts';

const cleanUps: (() => unknown)[] = [];
afterEach(async () => {
  for (const cleanUp of cleanUps.splice(0).reverse()) await cleanUp();
});

async function start(folder: string): Promise<KioskProcess> {
  const kiosk = await startOn(folder);
  cleanUps.push(() => kill(kiosk));
  return kiosk;
}

test('two pages that give one animal the same dose at once give it once', async () => {
  const folder = farmFolder();
  const kiosk = await start(folder);
  const ledger: Ledger = new Map();
  const jugId = await begin(kiosk.base, ledger);
  const kids = await learnKids(kiosk.base, ledger, jugId);
  const before = acknowledged(ledger, 'give-group').length;
  for (const kid of kids) {
    const both = await Promise.all([1, 2, 3].map(() => give(kiosk.base, ledger, jugId, kid)));
    expect(both.map(({ state }) => state).sort()).toEqual(['acknowledged', 'refused', 'refused']);
  }
  expect(acknowledged(ledger, 'give-group')).toHaveLength(before + kids.length);
  await kill(kiosk, 'SIGTERM');
  expect(reckon(databaseOf(folder), ledger, true)).toEqual({ lost: [], miscounted: [], halves: [] });
});

test('a page that does not read holds nobody up, and is told in order when it reads again', async () => {
  const folder = farmFolder();
  const kiosk = await start(folder);
  const ledger: Ledger = new Map();
  const jugId = await begin(kiosk.base, ledger);
  const kids = await learnKids(kiosk.base, ledger, jugId);
  const socket = new WebSocket(`${kiosk.base.replace('http', 'ws')}/ws`, { headers: { origin: kiosk.base } });
  cleanUps.push(() => socket.terminate());
  const heard: { type: string; seq?: number }[] = [];
  socket.on('message', (raw) => heard.push(JSON.parse(String(raw))));
  await expect.poll(() => heard.some(({ type }) => type === 'snapshot'), { timeout: 10_000 }).toBe(true);
  socket.pause();
  const asleep = heard.length;
  const working = work(kiosk.base, ledger, jugId, kids);
  await new Promise((resolve) => setTimeout(resolve, 4000));
  socket.resume();
  await expect
    .poll(() => heard.slice(asleep).some(({ type }) => type === 'snapshot') || heard.length > asleep + 20, {
      timeout: 10_000,
    })
    .toBe(true);
  // The other page was served all the while.
  expect(acknowledged(ledger, 'note-animal').length).toBeGreaterThan(20);
  const seqs = heard.flatMap(({ seq }) => (seq === undefined ? [] : [seq]));
  expect(seqs).toEqual([...seqs].sort((a, b) => a - b));
  await kill(kiosk);
  await working;
});

import { afterEach, expect, test } from 'vitest';
import { WebSocket } from 'ws';
import { reckon } from './books.ts';
import { databaseOf, farmFolder, kill, startOn } from './farm.ts';
import type { Ledger } from './ledger.ts';
import { begin, learnKids, work } from './round.ts';

const cleanUps: (() => unknown)[] = [];
afterEach(async () => {
  for (const cleanUp of cleanUps.splice(0).reverse()) await cleanUp();
});

test('a kiosk at work ends in seconds when it is told to, though a page reads nothing', async () => {
  const folder = farmFolder();
  const kiosk = await startOn(folder);
  cleanUps.push(() => kill(kiosk));
  const ledger: Ledger = new Map();
  const jugId = await begin(kiosk.base, ledger);
  const kids = await learnKids(kiosk.base, ledger, jugId);
  const socket = new WebSocket(`${kiosk.base.replace('http', 'ws')}/ws`, { headers: { origin: kiosk.base } });
  cleanUps.push(() => socket.terminate());
  await new Promise((resolve) => socket.once('message', resolve));
  socket.pause();
  const working = work(kiosk.base, ledger, jugId, kids);
  await new Promise((resolve) => setTimeout(resolve, 1000));
  const toldAt = performance.now();
  await kill(kiosk, 'SIGTERM');
  expect(performance.now() - toldAt).toBeLessThan(10_000);
  expect(kiosk.child.exitCode).toBe(0);
  await working;
  expect(reckon(databaseOf(folder), ledger, false)).toEqual({ lost: [], miscounted: [], halves: [] });
});

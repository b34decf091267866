import { expect, onTestFinished, test } from 'vitest';
import { WebSocket } from 'ws';
import { putToWork, startForTest } from './at-work.ts';
import { reckon } from './books.ts';
import { databaseOf, farmFolder, kill } from './farm.ts';
import { work } from './round.ts';

test('a kiosk at work ends in seconds when it is told to, though a page reads nothing', async () => {
  const folder = farmFolder();
  const kiosk = await startForTest(folder);
  const { ledger, jugId, kids } = await putToWork(kiosk);
  const socket = new WebSocket(`${kiosk.base.replace('http', 'ws')}/ws`, { headers: { origin: kiosk.base } });
  onTestFinished(() => socket.terminate());
  await new Promise((resolve) => socket.once('message', resolve));
  socket.pause();
  const working = work(kiosk.base, ledger, jugId, kids);
  await new Promise((resolve) => setTimeout(resolve, 1000));
  const toldAt = performance.now();
  await kill(kiosk, 'SIGTERM');
  expect(performance.now() - toldAt).toBeLessThan(10_000);
  expect(kiosk.child.signalCode).toBe('SIGTERM');
  await working;
  expect(reckon(databaseOf(folder), ledger, false)).toEqual({ lost: [], miscounted: [], halves: [] });
});

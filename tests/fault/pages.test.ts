import { expect, onTestFinished, test } from 'vitest';
import { WebSocket } from 'ws';
import { putToWork, startForTest } from './at-work.ts';
import { reckon } from './books.ts';
import { databaseOf, farmFolder, kill } from './farm.ts';
import { acknowledged } from './ledger.ts';
import { give, work } from './round.ts';

test('two pages that give one animal the same dose at once give it once', async () => {
  const folder = farmFolder();
  const kiosk = await startForTest(folder);
  const { ledger, jugId, kids } = await putToWork(kiosk);
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
  const kiosk = await startForTest(folder);
  const { ledger, jugId, kids } = await putToWork(kiosk);
  const socket = new WebSocket(`${kiosk.base.replace('http', 'ws')}/ws`, { headers: { origin: kiosk.base } });
  onTestFinished(() => socket.terminate());
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

import type { AddressInfo } from 'node:net';
import { EspeakMouth } from '../../hardware/mouth/espeak-mouth.ts';
import { EspeakProcess } from '../../hardware/mouth/espeak-process.ts';
import { programFound } from '../../hardware/mouth/find-engine.ts';
import { systemTimers } from '../../hardware/serial/timers.ts';
import { buildApp } from '../../server/app.ts';
import type { House } from '../../server/house.ts';
import type { Outlet } from '../../server/speech/outlet.ts';
import { createSpeaker } from '../../server/speech/speaker.ts';
import { stateView } from '../../server/view/state-view.ts';
import { closedNetwork } from '../server/make/closed-network.ts';
import { quietMachine, quietStanding } from '../server/make/quiet.ts';
import { bringToOffer, testBarn } from '../server/make/test-barn.ts';
import type { Figure } from './table.ts';

/** What the first sound of a dose may take after the weight is held, in milliseconds. */
const ALLOWED_MS = 150;
const ROUNDS = 30;
const VOICING = { voice: 'en-us', rate: 155 };
const TEXT = 'three point seven millilitres, six mil syringe';

/** From a held weight to the first byte of its dose as a page receives it; and what waiting with the voice saves. */
export async function mouthFigures(): Promise<Figure[]> {
  if (!programFound('espeak-ng')) throw new Error('espeak-ng is not installed, so nothing was measured');
  const held = await heldToSound();
  const [warm, cold, cached] = await rendering();
  return [
    {
      what: 'held weight to first byte of its dose, p95',
      ratio: ALLOWED_MS / held.p95,
      against: `the ${ALLOWED_MS} ms allowed`,
      raw: `${held.p95.toFixed(1)} ms, median ${held.median.toFixed(1)} ms`,
    },
    {
      what: 'a line to an engine that waits, median',
      ratio: cold / warm,
      against: 'one started for it',
      raw: `${warm.toFixed(1)} ms, ${cold.toFixed(1)} ms`,
    },
    {
      what: 'the same line again, median',
      ratio: warm / cached,
      against: 'rendering it',
      raw: `${(1000 * cached).toFixed(1)} µs`,
    },
  ];
}

async function heldToSound() {
  const mouth = new EspeakMouth({ program: 'espeak-ng' });
  const times: number[] = [];
  // A barn for each round: every dose is a new sentence to a round that knows nothing of the last.
  for (let round = 0; round < ROUNDS; round += 1) {
    const test = testBarn();
    let told: (path: string) => void = () => {};
    const outlet: Outlet = {
      heard: () => 'heard',
      words: () => false,
      say: ({ id }) => told(`/api/speech/${id}.wav`),
      hush: () => {},
      sound: () => true,
    };
    const barn = test.barn.context;
    const options = { barn, timers: systemTimers(), mouth, outlet, changed: () => {}, log: () => {} };
    const speaker = createSpeaker({ ...options, mouth: { ...pick(mouth), stop: () => {} } });
    const standing = quietStanding(barn, { voice: speaker.view });
    const house: House = {
      barn: test.barn,
      standing,
      speaker,
      hearing: { told: () => {}, sound: () => {}, gone: () => {} },
      network: closedNetwork(),
      pages: { told: () => {}, gone: () => {} },
      machine: quietMachine,
      state: () => stateView(barn, standing),
      log: () => {},
      stop: async () => {},
    };
    const app = await buildApp(house, '127.0.0.1', null);
    await app.listen({ port: 0, host: '127.0.0.1' });
    const { port } = app.server.address() as AddressInfo;
    speaker.look();
    // The engine has long been waiting by the time an animal stands still.
    await new Promise((resolve) => setTimeout(resolve, 150));
    const path = new Promise<string>((resolve) => {
      told = resolve;
    });
    bringToOffer(test, 14_000 + 60 * round);
    const from = performance.now();
    speaker.look();
    const response = await fetch(`http://127.0.0.1:${port}${await path}`);
    const first = await response.body?.getReader().read();
    if (!response.ok || first?.value === undefined) throw new Error('no sound came, so nothing was measured');
    times.push(performance.now() - from);
    speaker.stop();
    await app.close();
  }
  mouth.stop();
  times.sort((a, b) => a - b);
  return { median: at(times, 0.5), p95: at(times, 0.95) };
}

function pick(mouth: EspeakMouth): Pick<EspeakMouth, 'render' | 'warm'> {
  return {
    render: (text, voicing) => mouth.render(text, voicing),
    warm: (voicing) => mouth.warm(voicing),
  };
}

/** A line rendered by a process that waited, by one started for it, and from the cache. */
async function rendering(): Promise<[number, number, number]> {
  const [warm, cold, cached]: [number[], number[], number[]] = [[], [], []];
  const mouth = new EspeakMouth({ program: 'espeak-ng' });
  await mouth.render(TEXT, VOICING);
  for (let i = 0; i < ROUNDS; i += 1) {
    const waiting = new EspeakProcess('espeak-ng', VOICING);
    await new Promise((resolve) => setTimeout(resolve, 150));
    warm.push(await timed(() => waiting.render(TEXT)));
    cold.push(await timed(() => new EspeakProcess('espeak-ng', VOICING).render(TEXT)));
    cached.push(await timed(() => mouth.render(TEXT, VOICING)));
  }
  mouth.stop();
  return [median(warm), median(cold), median(cached)];
}

async function timed(work: () => Promise<unknown>): Promise<number> {
  const from = performance.now();
  if ((await work()) === null) throw new Error('a line gave no sound, so nothing was measured');
  return performance.now() - from;
}

function median(times: number[]): number {
  return at(
    [...times].sort((a, b) => a - b),
    0.5,
  );
}

function at(sorted: readonly number[], share: number): number {
  return sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN;
}

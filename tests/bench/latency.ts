import type { Connection } from '../../hardware/serial/connection.ts';
import { systemTimers } from '../../hardware/serial/timers.ts';
import { createDevices } from '../../server/devices/devices.ts';
import { stateView } from '../../server/view/state-view.ts';
import { quietStanding } from '../server/make/quiet.ts';
import { bringToOffer, testBarn } from '../server/make/test-barn.ts';
import type { Figure } from './table.ts';

/** What a reading may take from its last byte to the state that screens are told, in milliseconds. */
const ALLOWED_MS = 5;
/** Readings fed to each of the two scales, as if at 50 Hz for a minute. */
const FRAMES = 3000;

/** A line whose far end is this benchmark. */
function wire() {
  let listener: (chunk: Uint8Array) => void = () => {};
  const connection: Connection = {
    write: () => {},
    close: async () => {},
    onData: (onData) => {
      listener = onData;
    },
    onClose: () => {},
  };
  return { connection, deliver: (text: string) => listener(Buffer.from(text, 'latin1')) };
}

/** From the last byte of a frame to the state that screens are told, both scales streaming. */
export async function latencyFigures(): Promise<Figure[]> {
  const test = testBarn();
  bringToOffer(test);
  const wires = { '/p': wire(), '/b': wire() };
  const devices = createDevices({
    config: {
      platform: { path: '/p', profile: 'st-gs', baud: 9600 },
      bench: { path: '/b', profile: 'st-gs', baud: 9600 },
    },
    openPort: async (path) => wires[path as keyof typeof wires].connection,
    timers: systemTimers(),
    random: Math.random,
    listener: { reading: test.barn.read, wandRead: test.barn.wandRead, link: test.barn.linkChanged },
  });
  const standing = quietStanding(test.barn.context, { devices: devices.views });
  // The settling time of a link is real: let it pass.
  await new Promise((resolve) => setTimeout(resolve, 600));
  const times: number[] = [];
  for (let i = 0; i < FRAMES; i += 1) {
    for (const path of ['/p', '/b'] as const) {
      const from = performance.now();
      wires[path].deliver(`ST,GS,+  ${(15 + (i % 40) / 20).toFixed(2)}kg\r\n`);
      const state = stateView(test.barn.context, standing);
      times.push(performance.now() - from);
      if (i === FRAMES - 1 && state.bench.live === null)
        throw new Error('no reading arrived, so nothing was measured');
    }
  }
  await devices.stop();
  times.sort((a, b) => a - b);
  const p99 = times[Math.floor(0.99 * times.length)] ?? Number.NaN;
  return [
    {
      what: 'last byte to state, p99, two scales',
      ratio: ALLOWED_MS / p99,
      against: `the ${ALLOWED_MS} ms allowed`,
      raw: `${p99.toFixed(2)} ms`,
    },
  ];
}

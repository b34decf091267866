import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { grams, kilograms } from '../../../core/quantity/mass.ts';
import { QUESTIONS, recogniseScale } from '../../../hardware/scale/listen.ts';
import type { Connection } from '../../../hardware/serial/connection.ts';
import { openSerialPort } from '../../../hardware/serial/serialport-connection.ts';
import { withoutEvenParity } from '../../../hardware/serial/seven-bits.ts';
import { systemTimers } from '../../../hardware/serial/timers.ts';
import { createMemoryCable } from '../../../hardware/simulator/memory-cable.ts';
import { createPtyCable } from '../../../hardware/simulator/pty-cable.ts';
import { createSimScale } from '../../../hardware/simulator/sim-scale.ts';
import { SIM_FORMATS, type SimFormat } from '../../../hardware/simulator/sim-voice.ts';
import { ManualTimers } from '../manual-timers.ts';
import { socatPresent } from '../socat-present.ts';

/** Three quarters of a minute are the longest a search takes. */
const LONGEST_MS = 45_000;

function scaleOf(format: SimFormat, timers: ManualTimers | ReturnType<typeof systemTimers>) {
  return createSimScale({
    timers,
    format,
    face: { unit: 'kg', division: grams(50) },
    capacity: kilograms(150),
    load: () => grams(12_350),
    changing: () => false,
  });
}

/** Searches in memory what the far end does; gives the result and all that was written to it. */
async function search(farEnd: (connection: Connection) => void, timers = new ManualTimers()) {
  const written: Uint8Array[] = [];
  const steps: string[] = [];
  const cable = createMemoryCable('memory:unknown', timers, farEnd);
  const openPort = async (path: string, baud: number) => {
    const port = await cable.openPort(path, baud);
    return {
      ...port,
      write(bytes: Uint8Array) {
        written.push(bytes);
        port.write(bytes);
      },
    };
  };
  const searching = recogniseScale({
    path: 'memory:unknown',
    openPort,
    timers,
    onStep: (baud, asking) => steps.push(`${baud}${asking ? '?' : ''}`),
  });
  await timers.advance(LONGEST_MS);
  const found = await Promise.race([searching, Promise.resolve('still searching' as const)]);
  if (found === 'still searching') throw new Error(found);
  // The port is free again.
  await (await cable.openPort('memory:unknown', 9600)).close();
  return { found, written, steps };
}

describe('the search for the format of a scale', () => {
  it.each(SIM_FORMATS)('finds %s', async (format) => {
    const timers = new ManualTimers();
    const scale = scaleOf(format, timers);
    const { found, written } = await search(scale.attach, timers);
    scale.stop();
    const best = found.filter(({ confidence }) => confidence === found[0]?.confidence);
    expect(best.map(({ profileId }) => profileId)).toContain(format);
    expect(found[0]?.baud).toBe(9600);
    const streams = ['st-gs', 'header-comma', 'value-unit', 'blank-unit', 'status-words'].includes(format);
    if (streams) expect(written).toEqual([]);
  });

  it('asks only for weights, never for zero or tare, whatever is plugged in', async () => {
    const { found, written, steps } = await search((far) => far.onData(() => {}));
    expect(found).toEqual([]);
    expect(steps).toHaveLength(14);
    expect(new Set(written.map((bytes) => Buffer.from(bytes).toString('hex')))).toEqual(
      new Set(QUESTIONS.map((bytes) => Buffer.from(bytes).toString('hex'))),
    );
    const asked = written.map((bytes) => Buffer.from(withoutEvenParity(bytes)).toString('latin1')).join('');
    expect(asked).not.toMatch(/[ZTC@]/);
  });

  it('is not misled by an echo of its own questions', async () => {
    const { found } = await search((far) => far.onData((chunk) => far.write(chunk)));
    expect(found).toEqual([]);
  });

  it('gives up where the port does not open, with the reason', async () => {
    const timers = new ManualTimers();
    const cable = createMemoryCable('memory:held', timers, () => {});
    await cable.openPort('memory:held', 9600);
    await expect(
      recogniseScale({ path: 'memory:held', openPort: cable.openPort, timers }),
    ).rejects.toMatchObject({ code: 'in-use' });
  });

  it('ends early when told to, and frees the port', async () => {
    const timers = new ManualTimers();
    const stop = new AbortController();
    const cable = createMemoryCable('memory:quiet', timers, () => {});
    const searching = recogniseScale({
      path: 'memory:quiet',
      openPort: cable.openPort,
      timers,
      signal: stop.signal,
    });
    await timers.advance(500);
    stop.abort();
    await timers.advance(2000);
    expect(await searching).toEqual([]);
    await (await cable.openPort('memory:quiet', 9600)).close();
  });

  const onPty = socatPresent
    ? 'works on a pseudo-terminal'
    : 'works on a pseudo-terminal (left out: no socat)';
  it.skipIf(!socatPresent).each(['st-gs', 'sma'] as const)(
    `${onPty}, for %s`,
    async (format) => {
      const folder = await mkdtemp(join(tmpdir(), 'byreside-listen-'));
      const timers = systemTimers();
      const scale = scaleOf(format, timers);
      const cable = await createPtyCable(folder, 'port', scale.attach);
      if (cable === null) throw new Error('no socat');
      const found = await recogniseScale({
        path: cable.path,
        openPort: openSerialPort,
        timers,
        bauds: [9600],
      });
      expect(found[0]).toMatchObject({ profileId: format, unit: 'kg', baud: 9600 });
      scale.stop();
      await cable.stop();
      await rm(folder, { recursive: true, force: true });
    },
    20_000,
  );
});

import { readdirSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { OpenFailure } from '../../../hardware/serial/open-failure.ts';
import { openSerialPort } from '../../../hardware/serial/serialport-connection.ts';
import { createPtyPair, type PtyPair } from '../../../hardware/simulator/pty-pair.ts';
import { bytes } from '../bytes.ts';
import { socatPresent } from '../socat-present.ts';

/** A loaded machine may let a test wait; what is waited for comes once and at once. */
const PATIENT = { timeout: 5000, interval: 5 };

async function failure(path: string): Promise<OpenFailure> {
  const error: unknown = await openSerialPort(path, 9600).then(
    () => null,
    (reason: unknown) => reason,
  );
  if (!(error instanceof OpenFailure)) throw new Error(`expected an OpenFailure, got ${String(error)}`);
  return error;
}

describe('opening a serial port', () => {
  it.each([
    ['/dev/no-such-port', 'not-found'],
    ['/dev/null', 'not-serial'],
    ['/', 'not-serial'],
  ])('at %s fails as %s, with a remedy', async (path, code) => {
    const error = await failure(path);
    expect(error.code).toBe(code);
    expect(error.remedy).toMatch(/^[A-Z].+\.$/);
    expect(error.message).toContain(path);
    expect(error.cause).toBeInstanceOf(Error);
  });

  it('keeps no file descriptor of tries that failed', async () => {
    await failure('/dev/null');
    const before = readdirSync('/proc/self/fd').length;
    for (let attempt = 0; attempt < 20; attempt += 1) await failure('/dev/null');
    expect(readdirSync('/proc/self/fd').length).toBeLessThanOrEqual(before + 1);
  });
});

const suite = socatPresent ? 'an open serial port' : 'an open serial port (left out: socat is not installed)';
describe.skipIf(!socatPresent)(suite, () => {
  let folder: string;
  let pair: PtyPair;
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'byreside-port-'));
    const made = await createPtyPair(join(folder, 'near'), join(folder, 'far'));
    if (!made.ok) throw new Error(made.why);
    pair = made.pair;
  });
  afterEach(async () => {
    await pair.pull();
    await rm(folder, { recursive: true, force: true });
  });

  it('carries bytes both ways, all 256 of them unchanged', async () => {
    const near = await openSerialPort(pair.near, 9600);
    const far = await openSerialPort(pair.far, 9600);
    const every = Uint8Array.from({ length: 256 }, (_, byte) => byte);
    const arrived: number[] = [];
    const echoed: number[] = [];
    far.onData((chunk) => {
      arrived.push(...chunk);
      far.write(chunk);
    });
    near.onData((chunk) => echoed.push(...chunk));
    near.write(every);
    await expect.poll(() => echoed.length, PATIENT).toBe(256);
    expect(arrived).toEqual([...every]);
    expect(echoed).toEqual([...every]);
    await Promise.all([near.close(), far.close()]);
  });

  it('is in use for a second one, and free when its close has resolved', async () => {
    const first = await openSerialPort(pair.near, 9600);
    expect((await failure(pair.near)).code).toBe('in-use');
    await first.close();
    await (await openSerialPort(pair.near, 9600)).close();
  });

  it('keeps no file descriptor of tries that found it in use', async () => {
    const first = await openSerialPort(pair.near, 9600);
    const before = readdirSync('/proc/self/fd').length;
    for (let attempt = 0; attempt < 20; attempt += 1) await failure(pair.near);
    expect(readdirSync('/proc/self/fd').length).toBeLessThanOrEqual(before + 1);
    await first.close();
  });

  it('tells its end once, though it is closed twice', async () => {
    const port = await openSerialPort(pair.near, 9600);
    const ends: string[] = [];
    port.onClose((reason) => ends.push(reason));
    await Promise.all([port.close(), port.close()]);
    await port.close();
    expect(ends).toEqual(['closed']);
  });

  it('tells a pull once, without being asked, and can still be closed', async () => {
    const port = await openSerialPort(pair.near, 9600);
    const ends: string[] = [];
    port.onClose((reason) => ends.push(reason));
    await pair.pull();
    await expect.poll(() => ends.length, PATIENT).toBe(1);
    port.write(bytes('into the void'));
    await port.close();
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(ends).toHaveLength(1);
    expect(ends[0]).not.toBe('closed');
  });

  it('survives a write at the very moment of the pull', async () => {
    const port = await openSerialPort(pair.near, 9600);
    const ends: string[] = [];
    port.onClose((reason) => ends.push(reason));
    const pulled = pair.pull();
    for (let turn = 0; turn < 50; turn += 1) {
      port.write(bytes('\nW\r'));
      await new Promise((resolve) => setImmediate(resolve));
    }
    await pulled;
    await expect.poll(() => ends.length, PATIENT).toBe(1);
    await port.close();
  });

  it('tells every pull, though the line hung up at the moment of opening or between two reads', async () => {
    for (let cycle = 0; cycle < 30; cycle += 1) {
      const port = await openSerialPort(pair.near, 9600);
      const far = await openSerialPort(pair.far, 9600);
      const ends: string[] = [];
      port.onClose((reason) => ends.push(reason));
      const flood = setInterval(() => far.write(new Uint8Array(200).fill(0x41)), 1);
      // Every other time nothing was read yet.
      if (cycle % 2 === 1) await new Promise((resolve) => setTimeout(resolve, 20));
      await pair.pull();
      clearInterval(flood);
      await expect.poll(() => ends.length, PATIENT).toBe(1);
      await Promise.all([port.close(), far.close()]);
      await pair.plug();
    }
  }, 60_000);

  it('tells an end that came before anybody listened', async () => {
    const port = await openSerialPort(pair.near, 9600);
    await port.close();
    const ends: string[] = [];
    port.onClose((reason) => ends.push(reason));
    expect(ends).toEqual(['closed']);
  });

  it('drops what a line that nobody reads does not take, and still closes', async () => {
    const port = await openSerialPort(pair.near, 9600);
    const block = new Uint8Array(1024).fill(0x41);
    for (let written = 0; written < 500; written += 1) {
      port.write(block);
      if (written % 50 === 0) await new Promise((resolve) => setTimeout(resolve, 5));
    }
    const far = await openSerialPort(pair.far, 9600);
    let got = 0;
    far.onData((chunk) => {
      got += chunk.length;
    });
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(got).toBeLessThan(100 * 1024);
    await Promise.all([port.close(), far.close()]);
  });
});

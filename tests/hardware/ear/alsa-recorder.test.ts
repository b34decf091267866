import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { type Recorder, startRecorder } from '../../../hardware/ear/alsa-recorder.ts';
import { systemTimers } from '../../../hardware/serial/timers.ts';

const folder = mkdtempSync(join(tmpdir(), 'byreside-recorder-'));
let recorder: Recorder | null = null;
afterEach(() => {
  recorder?.stop();
  rmSync(folder, { recursive: true, force: true });
});

/** A stand-in for the recorder of the machine: writes down how it was called, sends five bytes, then three, and ends. */
function program(): string {
  const path = join(folder, 'recorder');
  writeFileSync(
    path,
    `#!/bin/sh\necho "$@" >> ${join(folder, 'calls')}\nprintf '\\001\\000\\002\\000\\377'\nsleep 0.2\nprintf '\\377\\003\\000'\n`,
  );
  chmodSync(path, 0o755);
  return path;
}

test('what the board hears comes as samples, over the edges of its pieces; ended, it is started again', async () => {
  const heard: number[] = [];
  const running: boolean[] = [];
  recorder = startRecorder({
    device: 'plughw:1,0',
    program: program(),
    timers: systemTimers(),
    random: () => 0.5,
    onSound: (samples) => heard.push(...samples),
    onRunning: (now) => running.push(now),
  });
  await expect.poll(() => heard.length, { timeout: 20_000 }).toBeGreaterThanOrEqual(8);
  expect(heard.slice(0, 8)).toEqual([1, 2, -1, 3, 1, 2, -1, 3]);
  expect(running.slice(0, 3)).toEqual([true, false, true]);
  const [call] = readFileSync(join(folder, 'calls'), 'utf8').split('\n');
  expect(call).toBe('-q -D plughw:1,0 -t raw -f S16_LE -r 16000 -c 1');
});

test('a recorder that is not installed is tried again, and tells nothing', async () => {
  const running: boolean[] = [];
  const random: number[] = [];
  recorder = startRecorder({
    device: 'default',
    program: join(folder, 'none'),
    timers: systemTimers(),
    random: () => {
      random.push(0.5);
      return 0.5;
    },
    onSound: () => {},
    onRunning: (now) => running.push(now),
  });
  await expect.poll(() => random.length, { timeout: 20_000 }).toBeGreaterThanOrEqual(2);
  expect(running).toEqual([]);
  expect(existsSync(join(folder, 'none'))).toBe(false);
});

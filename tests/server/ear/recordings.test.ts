import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { createRecordings } from '../../../server/ear/recordings.ts';

let data = '';
beforeEach(() => {
  data = mkdtempSync(join(tmpdir(), 'byreside-'));
});
afterEach(() => rmSync(data, { recursive: true, force: true }));

const AT = Date.UTC(2027, 3, 12, 12);
const SECOND = new Int16Array(16_000).fill(7);
const SECOND_BYTES = 44 + 32_000;

test('each utterance is a WAV of its own, named by time and what it was taken for', () => {
  const folder = join(data, 'recordings');
  const recordings = createRecordings(folder);
  expect(recordings.bytes()).toBe(0);
  recordings.add(SECOND, AT, 'unsure: given/../three');
  expect(readdirSync(folder)).toEqual(['2027-04-12T12-00-00.000Z unsure giventhree.wav']);
  const [name = ''] = readdirSync(folder);
  const file = readFileSync(join(folder, name));
  expect([file.toString('latin1', 0, 4), file.readInt16LE(44), file.length]).toEqual([
    'RIFF',
    7,
    SECOND_BYTES,
  ]);
  expect(recordings.bytes()).toBe(SECOND_BYTES);
});

test('never more lies there than is allowed: the oldest give way, those of an earlier start too', () => {
  const most = 3 * SECOND_BYTES;
  const before = createRecordings(data, most);
  before.add(SECOND, AT, 'one');
  before.add(SECOND, AT + 1000, 'two');
  const recordings = createRecordings(data, most);
  expect(recordings.bytes()).toBe(2 * SECOND_BYTES);
  recordings.add(SECOND, AT + 2000, 'three');
  recordings.add(SECOND, AT + 3000, 'four');
  expect(readdirSync(data).map((name) => name.slice(25, -4))).toEqual(['two', 'three', 'four']);
  recordings.add(new Int16Array(most), AT + 4000, 'longer than all that is allowed');
  expect(recordings.bytes()).toBe(most);
});

test('wiped, nothing lies there; without a folder nothing is ever kept', () => {
  const folder = join(data, 'recordings');
  const recordings = createRecordings(folder);
  recordings.add(SECOND, AT, 'one');
  recordings.wipe();
  expect([readdirSync(data), recordings.bytes()]).toEqual([[], 0]);
  const nowhere = createRecordings(null);
  nowhere.add(SECOND, AT, 'one');
  nowhere.wipe();
  expect(nowhere.bytes()).toBe(0);
});

import { describe, expect, test } from 'vitest';
import {
  CLOSES_AFTER_MS,
  createGate,
  type GateEvent,
  joined,
  LONGEST_MS,
} from '../../../hardware/ear/gate.ts';
import { EAR_RATE } from '../../../hardware/ear/pcm.ts';
import { seededRandom } from '../../../hardware/simulator/random.ts';

const random = seededRandom(5);

function hiss(ms: number, level: number): Int16Array {
  return Int16Array.from({ length: (EAR_RATE * ms) / 1000 }, () => Math.round(level * (2 * random() - 1)));
}

function kinds(events: readonly GateEvent[]): string {
  return events
    .map(({ kind }) => kind)
    .join(' ')
    .replace(/samples( samples)*/g, 'samples');
}

describe('the gate', () => {
  test('opens on what is louder than the noise, with what came just before, and closes after it', () => {
    const gate = createGate();
    expect(gate.push(hiss(1000, 100))).toEqual([]);
    const events = gate.push(joined([hiss(500, 3000), hiss(CLOSES_AFTER_MS + 200, 100)]));
    expect(kinds(events)).toBe('opened samples closed');
    const [opened] = events;
    if (opened?.kind !== 'opened') throw new Error('it did not open');
    expect(opened.samples.length).toBe(0.3 * EAR_RATE);
  });

  test('stays shut over steady noise of any loudness', () => {
    for (const level of [0, 1, 30, 1000, 30_000]) expect(createGate().push(hiss(3000, level))).toEqual([]);
  });

  test('a knock is too short to open it', () => {
    const gate = createGate();
    gate.push(hiss(1000, 100));
    expect(gate.push(joined([hiss(30, 20_000), hiss(500, 100)]))).toEqual([]);
  });

  test('in a noise it is quiet again when it is far softer than the speech was', () => {
    const gate = createGate();
    gate.push(hiss(1000, 100));
    const events = gate.push(joined([hiss(500, 10_000), hiss(300, 500)]));
    const quiet = events.flatMap((event) => (event.kind === 'samples' ? [event.quietMs] : []));
    expect(Math.max(...quiet.slice(0, 40))).toBe(0);
    expect(quiet.at(-1)).toBeGreaterThan(250);
  });

  test('a hum far below speech does not hide it', () => {
    const gate = createGate();
    const hum = (ms: number) =>
      Int16Array.from({ length: (EAR_RATE * ms) / 1000 }, (_, i) =>
        Math.round(8000 * Math.sin((2 * Math.PI * 50 * i) / EAR_RATE)),
      );
    gate.push(hum(1000));
    const speech = hum(500).map(
      (x, i) => x + Math.round(1500 * Math.sin((2 * Math.PI * 1800 * i) / EAR_RATE)),
    );
    expect(kinds(gate.push(speech))).toBe('opened samples');
  });

  test('what never ends is cut, and then taken for noise', () => {
    const gate = createGate();
    gate.push(hiss(500, 100));
    const events = gate.push(hiss(LONGEST_MS + 3000, 5000));
    expect(kinds(events)).toBe('opened samples closed');
  });

  test('how the stream is cut does not matter', () => {
    const sound = joined([hiss(500, 100), hiss(400, 3000), hiss(900, 100)]);
    const whole = createGate().push(sound);
    const gate = createGate();
    const pieces: GateEvent[] = [];
    for (let at = 0; at < sound.length; at += 77) pieces.push(...gate.push(sound.subarray(at, at + 77)));
    expect(pieces).toEqual(whole);
  });
});

test('unattended it learns the noise and lets nothing through; attended it opens on speech that goes on', () => {
  const gate = createGate();
  expect(gate.push(joined([hiss(1000, 100), hiss(500, 3000)]), false)).toEqual([]);
  expect(kinds(gate.push(hiss(300, 3000), true))).toBe('opened samples');
});

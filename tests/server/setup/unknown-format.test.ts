import { beforeEach, expect, test } from 'vitest';
import { proposals } from '../make/listened.ts';
import { type Bench, createBench } from '../make/setup-rig.ts';

let bench: Bench;
beforeEach(() => {
  bench = createBench();
});

test('a wand is tried at a speed, and kept once a tag was read', async () => {
  const wand = await bench.wand('/dev/wand');
  const rig = bench.rig();
  const all = await proposals(rig, 'wand', '/dev/wand');
  expect(all[0]).toMatchObject({ profile: 'wand-line', baud: 9600, confidence: null });
  rig.setup.try('wand', 0);
  await rig.timers.advance(1000);
  expect(rig.setup.keep()).toBe('not-proved');
  wand.presentTag('982000123456789');
  await rig.timers.advance(100);
  expect(rig.view('trial')).toMatchObject({ tag: '982000123456789', needs: { proof: false } });
  expect(rig.told).toEqual([]);
  expect(rig.setup.keep()).toBeNull();
  await rig.timers.advance(1000);
  wand.presentTag('982000123456789');
  await rig.timers.advance(100);
  expect(rig.config().wand).toEqual({ path: '/dev/wand', profile: 'wand-line', baud: 9600 });
  expect(rig.told.at(-1)).toBe('wand tag');
  await rig.stop();
});

test('a wand waved again and again is found at its own speed', async () => {
  const wand = await bench.wand('/dev/wand', 19_200);
  const rig = bench.rig();
  rig.setup.listen('wand', '/dev/wand');
  for (const expected of [9600, 115_200, 19_200]) {
    await rig.timers.advance(500);
    expect(rig.view('listening')).toMatchObject({ role: 'wand', baud: expected, asking: false });
    wand.presentTag('982000123456789');
  }
  await rig.timers.advance(500);
  const { proposals: found } = rig.view('proposals');
  expect(found.map(({ baud }) => baud)).toEqual([19_200, 9600, 115_200, 38_400, 57_600, 4800]);
  expect(found[0]?.sample).toContain('982');
  rig.setup.try('wand', 0);
  await rig.timers.advance(1000);
  wand.presentTag('982000123456780');
  await rig.timers.advance(100);
  expect(rig.setup.keep()).toBeNull();
  expect(rig.config().wand).toEqual({ path: '/dev/wand', profile: 'wand-line', baud: 19_200 });
  await rig.stop();
});

/** Lines of no format that is known: a mark in front, and the weight with one decimal less than its step. */
const strange = (load: number, moves: boolean): string =>
  `${moves ? 'MOT' : 'STB'}; ${(load / 1000).toFixed(2).padStart(8)} kg`;

test('a scale of an unknown format is read by an expression made of its own lines, and proved like any other', async () => {
  const scale = await bench.talker('/dev/one', strange);
  const rig = bench.rig();
  rig.setup.listen('platform', '/dev/one');
  // Whole lines are heard at the first speed: no other is tried, and nothing is asked.
  await rig.timers.advance(2500);
  expect(rig.view('proposals')).toMatchObject({ proposals: [], lines: true });
  expect(rig.setup.patterns()).toBe('wrong-state');
  expect(rig.setup.lines()).toBeNull();
  await rig.timers.advance(3000);
  // At rest all the time, nothing tells which of its words is the one of motion.
  expect(rig.view('lines')).toMatchObject({ link: 'ready', guesses: 0 });
  expect(rig.view('lines').lines.at(-1)).toBe('STB;     0.00 kg');
  expect(rig.setup.patterns()).toBe('no-pattern-yet');
  for (const load of [4000, 9500, 16_000, 19_300, 20_000]) {
    scale.load = load;
    await rig.timers.advance(100);
  }
  await rig.timers.advance(3000);
  expect(rig.view('lines').guesses).toBe(2);
  expect(rig.setup.patterns()).toBeNull();
  expect(rig.view('proposals').proposals[0]).toMatchObject({
    profile: 'pattern',
    title: 'At rest “STB”, moving “MOT”',
    unit: 'kg',
    unitKnown: true,
  });
  rig.setup.try('platform', 0);
  await rig.timers.advance(4000);
  expect(rig.view('trial')).toMatchObject({ live: 20_000, needs: { proof: true, noTare: true } });
  expect(rig.setup.keep()).toBe('not-proved');
  rig.setup.prove('kg-20');
  expect(rig.setup.keep()).toBe('tare-word-needed');
  rig.setup.neverTared();
  expect(rig.setup.countsIn(50)).toBeNull();
  expect(rig.setup.keep()).toBeNull();
  await rig.timers.advance(2000);
  expect(rig.config().platform).toMatchObject({ profile: 'pattern', divisionGrams: 500 });
  expect(rig.told.at(-1)).toBe('platform 20000');
  await rig.stop();
});

test('an expression with rest and motion the wrong way round is found out by the known weight', async () => {
  const scale = await bench.talker('/dev/one', strange);
  const rig = bench.rig();
  await proposals(rig, 'bench', '/dev/one');
  rig.setup.lines();
  await rig.timers.advance(2000);
  for (const load of [400, 700, 950, 1000]) {
    scale.load = load;
    await rig.timers.advance(100);
  }
  await rig.timers.advance(3000);
  rig.setup.patterns();
  rig.setup.try('bench', 1);
  await rig.timers.advance(4000);
  rig.setup.prove('kg-1');
  expect(rig.view('trial').proof).toMatchObject({ verdict: 'never-still' });
  expect(rig.setup.keep()).toBe('not-proved');
  await rig.stop();
});

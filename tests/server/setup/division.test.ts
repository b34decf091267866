import { beforeEach, expect, test } from 'vitest';
import { trial } from '../make/listened.ts';
import { type Bench, createBench } from '../make/setup-rig.ts';

let bench: Bench;
beforeEach(() => {
  bench = createBench();
});

test('a polled scale is asked what it carries and counts in, and that is kept with it', async () => {
  const scale = await bench.scale('/dev/one', 'sma');
  const rig = bench.rig();
  scale.load = 20_000;
  const seen = await trial(rig, 'platform', '/dev/one', 'sma');
  expect(seen.facts).toMatchObject({ capacityGrams: 300_000, divisionGrams: 50, by: 'scale' });
  rig.setup.prove('kg-20');
  expect(rig.setup.keep()).toBeNull();
  expect(rig.config().platform).toEqual({
    path: '/dev/one',
    profile: 'sma',
    baud: 9600,
    capacityGrams: 300_000,
    divisionGrams: 50,
  });
  await rig.timers.advance(2000);
  expect(rig.devices.views()[0]).toMatchObject({ capacityGrams: 300_000, divisionGrams: 50 });
  await rig.stop();
});

test('where the line cannot tell, the values shown rule out steps and the keeper chooses among the rest', async () => {
  const scale = await bench.scale('/dev/one', 'st-gs');
  const rig = bench.rig();
  await trial(rig, 'platform', '/dev/one', 'st-gs');
  expect(rig.view('trial').facts).toMatchObject({ capacityGrams: null, divisionGrams: null, by: null });
  for (const load of [20_000, 20_050, 20_300, 19_750, 21_100, 18_950, 20_600, 20_450, 22_350]) {
    scale.load = load;
    await rig.timers.advance(300);
  }
  const facts = rig.view('trial').facts;
  expect(facts?.valuesSeen).toBe(8);
  const by = (key: 'fits' | 'likely') =>
    facts?.choices.filter((choice) => choice[key]).map(({ grams }) => grams);
  expect(by('fits')).toEqual([10, 50]);
  expect(by('likely')).toEqual([50]);
  // What they have in common is told, and yet nothing is chosen before the keeper does.
  expect(facts?.divisionGrams).toBeNull();
  expect(rig.setup.countsIn(2)).toBe('no-such-division');
  expect(rig.setup.countsIn(3)).toBe('no-such-division');
  expect(rig.setup.countsIn(5)).toBeNull();
  expect(rig.view('trial').facts).toMatchObject({ divisionGrams: 50, by: 'keeper' });
  expect(rig.setup.keep()).toBeNull();
  expect(rig.config().platform).toMatchObject({ divisionGrams: 50 });
  await rig.stop();
});

test('a value between two steps takes the keeper’s word back', async () => {
  const scale = await bench.scale('/dev/one', 'st-gs');
  const rig = bench.rig();
  scale.load = 20_000;
  await trial(rig, 'platform', '/dev/one', 'st-gs');
  expect(rig.setup.countsIn(20)).toBeNull();
  scale.load = 20_050;
  await rig.timers.advance(500);
  expect(rig.view('trial').facts).toMatchObject({ divisionGrams: null, by: null });
  expect(rig.setup.keep()).toBeNull();
  expect(rig.config().platform).not.toHaveProperty('divisionGrams');
  await rig.stop();
});

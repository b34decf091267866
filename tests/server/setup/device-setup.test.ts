import { beforeEach, expect, test } from 'vitest';
import { type Bench, createBench, type SetupRig } from '../make/setup-rig.ts';

let bench: Bench;
beforeEach(() => {
  bench = createBench();
});

/** Listens at a port until the proposals stand. */
async function proposals(rig: SetupRig, role: 'platform' | 'bench' | 'wand', path: string) {
  expect(rig.setup.listen(role, path)).toBeNull();
  await rig.timers.advance(60_000);
  return rig.view('proposals').proposals;
}

/** Puts the first proposal of a format on trial and lets it run. */
async function trial(rig: SetupRig, role: 'platform' | 'bench', path: string, profile: string) {
  const index = (await proposals(rig, role, path)).findIndex((each) => each.profile === profile);
  expect(rig.setup.try(role, index)).toBeNull();
  await rig.timers.advance(4000);
  return rig.view('trial');
}

test('a scale that sends by itself is recognised, tried, proved, kept and read from then on', async () => {
  const scale = await bench.scale('/dev/one', 'st-gs');
  const rig = bench.rig();
  const [first] = await proposals(rig, 'platform', '/dev/one');
  expect(first).toMatchObject({ profile: 'st-gs', baud: 9600, unit: 'kg', unitKnown: true });
  expect(first?.sample).toContain('kg');
  scale.load = 20_000;
  expect(await trial(rig, 'platform', '/dev/one', 'st-gs')).toMatchObject({
    link: 'ready',
    live: 20_000,
    division: 10,
    still: true,
    proof: null,
    needs: { proof: false, noTare: false, otherFormat: false },
  });
  expect(rig.told).toEqual([]);
  expect(rig.setup.prove('kg-20')).toBeNull();
  expect(rig.view('trial').proof).toMatchObject({ verdict: 'right', knownGrams: 20_000, shownGrams: 20_000 });
  expect(rig.setup.keep()).toBeNull();
  expect(rig.config()).toEqual({ platform: { path: '/dev/one', profile: 'st-gs', baud: 9600 } });
  await rig.timers.advance(2000);
  expect(rig.setup.view()).toEqual({ step: 'idle' });
  expect(rig.devices.linkOf('platform')).toBe('ready');
  expect(rig.told).toContain('platform 20000');
  await rig.stop();
});

test('a scale that must be asked is asked only after listening in silence, and says so meanwhile', async () => {
  await bench.scale('/dev/one', 'sma', 'g');
  const rig = bench.rig();
  rig.setup.listen('bench', '/dev/one');
  await rig.timers.advance(300);
  expect(rig.view('listening')).toMatchObject({ role: 'bench', asking: false, baud: 9600, done: 0 });
  await rig.timers.advance(14_000);
  expect(rig.view('listening')).toMatchObject({ asking: true });
  await rig.timers.advance(30_000);
  expect(rig.view('proposals').proposals[0]).toMatchObject({ profile: 'sma', unit: 'g', unitKnown: true });
  await rig.stop();
});

test('where nothing that is known speaks, there are no proposals', async () => {
  const rig = bench.rig();
  await bench.wand('/dev/one');
  expect(await proposals(rig, 'bench', '/dev/one')).toEqual([]);
  expect(rig.setup.try('bench', 0)).toBe('no-such-proposal');
  await rig.stop();
});

test('a port that does not open says what to do', async () => {
  const rig = bench.rig();
  rig.setup.listen('bench', '/dev/none');
  await rig.timers.advance(100);
  expect(rig.view('failed').trouble).toContain('plugged in');
  await rig.stop();
});

test('a unit that is only guessed is not kept before a known weight proves it', async () => {
  const scale = await bench.scale('/dev/one', 'stx-weight', 'lb');
  const rig = bench.rig();
  scale.load = 20_000;
  expect(await trial(rig, 'bench', '/dev/one', 'stx-weight')).toMatchObject({ needs: { proof: true } });
  // The bench guesses grams, and the 44.1 it sends is a litre of water in no unit.
  expect(rig.setup.keep()).toBe('not-proved');
  expect(rig.setup.prove('L-1')).toBeNull();
  expect(rig.view('trial').proof).toMatchObject({ verdict: 'wrong' });
  expect(rig.setup.keep()).toBe('not-proved');
  await rig.stop();
});

test('on the platform a scale in pounds without a unit in its lines is tried in kilograms first, then proved in pounds', async () => {
  const scale = await bench.scale('/dev/one', 'stx-weight', 'lb');
  const rig = bench.rig();
  scale.load = 20_000;
  expect(await trial(rig, 'platform', '/dev/one', 'stx-weight')).toMatchObject({ live: 44_100 });
  rig.setup.prove('kg-20');
  const { proof, index } = rig.view('trial');
  expect(proof).toMatchObject({ verdict: 'other-unit', is: 'lb' });
  expect(proof?.instead).not.toBe(index);
  expect(rig.setup.try('platform', proof?.instead ?? -1)).toBeNull();
  await rig.timers.advance(4000);
  expect(rig.view('trial').live).toBeCloseTo(20_003.4, 1);
  rig.setup.prove('kg-20');
  expect(rig.view('trial').proof).toMatchObject({ verdict: 'right' });
  // Its lines do not tell gross from net: only the keeper's word lets it weigh animals.
  expect(rig.view('trial').needs).toEqual({ proof: false, noTare: true, otherFormat: false });
  expect(rig.setup.keep()).toBe('tare-word-needed');
  expect(rig.setup.neverTared()).toBeNull();
  expect(rig.view('trial').needs.noTare).toBe(false);
  expect(rig.setup.keep()).toBeNull();
  expect(rig.config().platform?.settings).toEqual({ unit: 'lb', noTare: true });
  await rig.timers.advance(3000);
  expect(rig.devices.linkOf('platform')).toBe('ready');
  await rig.stop();
});

test('a motion bit read the wrong way round is found out by a weight that stands still', async () => {
  const scale = await bench.scale('/dev/one', 'weight-status-inverse');
  const rig = bench.rig();
  scale.load = 10_000;
  await trial(rig, 'bench', '/dev/one', 'weight-status');
  rig.setup.prove('kg-1');
  expect(rig.view('trial').proof).toMatchObject({ verdict: 'wrong' });
  scale.load = 1000;
  await rig.timers.advance(4000);
  rig.setup.prove('kg-1');
  const { proof } = rig.view('trial');
  expect(proof).toMatchObject({ verdict: 'never-still' });
  expect(rig.view('trial').proposals[proof?.instead ?? -1]?.profile).toBe('weight-status-inverse');
  expect(rig.setup.keep()).toBe('not-proved');
  await rig.stop();
});

test('a format that can never tell gross from net is shown, but not kept for the platform', async () => {
  const scale = await bench.scale('/dev/one', 'header-comma');
  const rig = bench.rig();
  scale.load = 10_000;
  const seen = await trial(rig, 'platform', '/dev/one', 'header-comma');
  expect(seen).toMatchObject({ live: 10_000, needs: { otherFormat: true } });
  expect(rig.setup.neverTared()).toBe('wrong-state');
  expect(rig.setup.keep()).toBe('bench-only');
  expect(rig.config()).toEqual({});
  await rig.stop();
});

test('a weight that moves, is too light, or that nobody knows proves nothing', async () => {
  const scale = await bench.scale('/dev/one', 'st-gs', 'g');
  const rig = bench.rig();
  await trial(rig, 'bench', '/dev/one', 'st-gs');
  scale.load = 500;
  await rig.timers.advance(300);
  expect(rig.setup.prove('g-500')).toBe('scale-moving');
  expect(rig.setup.prove('kg-999')).toBe('no-such-weight');
  await rig.timers.advance(4000);
  expect(rig.setup.prove('g-500')).toBeNull();
  await scale.cable.pull();
  await rig.timers.advance(200);
  expect(rig.view('trial')).toMatchObject({ link: 'lost', live: null });
  expect(rig.setup.prove('g-500')).toBe('scale-not-ready');
  expect(rig.setup.keep()).toBe('scale-not-ready');
  await rig.stop();
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

const OWN = { path: '/dev/one', profile: 'st-gs', baud: 9600 } as const;

test('a set-up on the role’s own port blanks it, and dropping the set-up brings it back', async () => {
  const scale = await bench.scale('/dev/one', 'st-gs');
  const rig = bench.rig({ platform: OWN });
  scale.load = 7000;
  await rig.timers.advance(2000);
  expect(rig.told.at(-1)).toBe('platform 7000');
  await proposals(rig, 'platform', '/dev/one');
  expect(rig.told.at(-1)).toBe('platform blank');
  expect(rig.devices.linkOf('platform')).toBe('absent');
  rig.setup.try('platform', 0);
  await rig.timers.advance(500);
  rig.setup.drop();
  await rig.timers.advance(2000);
  expect(rig.devices.linkOf('platform')).toBe('ready');
  expect(rig.told.at(-1)).toBe('platform 7000');
  await rig.stop();
});

test('a set-up nobody goes on with ends by itself, and the device comes back', async () => {
  await bench.scale('/dev/one', 'st-gs');
  const rig = bench.rig({ platform: OWN });
  await proposals(rig, 'platform', '/dev/one');
  await rig.timers.advance(11 * 60_000);
  expect(rig.setup.view()).toEqual({ step: 'idle' });
  expect(rig.devices.linkOf('platform')).toBe('ready');
  await rig.stop();
});

test('dropped in the middle of listening, the port is let go and nothing is proposed', async () => {
  await bench.scale('/dev/one', 'st-gs');
  const rig = bench.rig({ platform: OWN });
  rig.setup.listen('platform', '/dev/one');
  await rig.timers.advance(400);
  rig.setup.drop();
  await rig.timers.advance(6000);
  expect(rig.setup.view()).toEqual({ step: 'idle' });
  expect(rig.devices.linkOf('platform')).toBe('ready');
  await rig.stop();
});

test('the port of another role is refused', async () => {
  await bench.scale('/dev/one', 'st-gs');
  const rig = bench.rig({ platform: OWN });
  expect(rig.setup.listen('bench', '/dev/one')).toBe('port-in-use');
  expect(rig.setup.view()).toEqual({ step: 'idle' });
  await rig.stop();
});

test('what the disk refuses is not kept, and the trial goes on', async () => {
  await bench.scale('/dev/one', 'st-gs');
  const rig = bench.rig();
  await trial(rig, 'bench', '/dev/one', 'st-gs');
  rig.disk.full = true;
  expect(() => rig.setup.keep()).toThrow('no room');
  await rig.timers.advance(1000);
  expect(rig.view('trial').link).toBe('ready');
  expect(rig.devices.linkOf('bench')).toBe('absent');
  await rig.stop();
});

test('a device removed is gone from the configuration and from its port', async () => {
  await bench.scale('/dev/one', 'st-gs');
  const rig = bench.rig({ platform: OWN });
  await rig.timers.advance(2000);
  expect(rig.setup.remove('bench')).toBe('wrong-state');
  expect(rig.setup.remove('platform')).toBeNull();
  await rig.timers.advance(100);
  expect(rig.config().platform).toBeUndefined();
  expect(rig.devices.views()[0]).toMatchObject({ role: 'platform', link: 'absent', path: null });
  expect(rig.told.at(-1)).toBe('platform blank');
  await rig.stop();
});

test('the ports are listed with who uses them, and one plugged in meanwhile is marked', async () => {
  const first = await bench.scale('/dev/one', 'st-gs');
  const rig = bench.rig({ platform: OWN });
  expect(rig.setup.look()).toBeNull();
  await rig.timers.advance(100);
  expect(rig.view('ports').ports).toEqual([
    { path: '/dev/one', device: '/dev/one', usedBy: 'platform', fresh: false },
  ]);
  await bench.scale('/dev/two', 'sma');
  await rig.timers.advance(1000);
  expect(rig.view('ports').ports).toMatchObject([
    { fresh: false },
    { path: '/dev/two', usedBy: null, fresh: true },
  ]);
  await first.cable.pull();
  await rig.timers.advance(1000);
  await rig.stop();
});

test.each(['try', 'prove', 'keep'] as const)('%s without a set-up under way does nothing', (verb) => {
  const { setup } = bench.rig();
  const why = verb === 'try' ? setup.try('bench', 0) : verb === 'prove' ? setup.prove('kg-1') : setup.keep();
  expect(why).toBe('wrong-state');
});

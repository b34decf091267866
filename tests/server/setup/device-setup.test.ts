import { beforeEach, expect, test } from 'vitest';
import { proposals, trial } from '../make/listened.ts';
import { type Bench, createBench } from '../make/setup-rig.ts';

let bench: Bench;
beforeEach(() => {
  bench = createBench();
});

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

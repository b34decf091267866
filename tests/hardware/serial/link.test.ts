import { readdirSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { scaleDriver } from '../../../hardware/scale/scale-driver.ts';
import { SMA } from '../../../hardware/scale/sma.ts';
import { ST_GS } from '../../../hardware/scale/st-gs.ts';
import { wandDriver } from '../../../hardware/wand/wand-driver.ts';
import { bytes } from '../bytes.ts';
import { createRig, memoryGround, ptyGround, type Rig } from '../link-rig.ts';
import { ManualTimers } from '../manual-timers.ts';
import { socatPresent } from '../socat-present.ts';

const LINE = 'ST,GS,+0012.34kg\r\n';
const GROUNDS = [
  { name: 'in memory', ground: memoryGround, skip: false },
  {
    name: socatPresent ? 'on pseudo-terminals' : 'on pseudo-terminals (left out: socat is not installed)',
    ground: ptyGround,
    skip: !socatPresent,
  },
];

describe.for(GROUNDS)('a link $name', { timeout: 30_000 }, ({ ground, skip }) => {
  let rig: Rig;
  const platform = () => rig.listen(scaleDriver(ST_GS, 'platform', () => rig.timers.now()));
  const bench = () => rig.listen(scaleDriver(SMA, 'bench', () => rig.timers.now()));
  const wand = () => rig.listen(wandDriver(() => rig.timers.now()));
  beforeEach(async (context) => {
    if (skip) context.skip();
    rig = await createRig(ground);
  });
  afterEach(async () => {
    if (!skip) await rig.stop();
  });

  it('settles, drops what comes meanwhile, and is ready with the first good frame', async () => {
    rig.feed(LINE);
    const heard = platform();
    expect(heard.status()).toBe('opening');
    await rig.until(() => heard.status() === 'ready', 2000);
    expect(heard.states.map((state) => state.status)).toEqual(['settling', 'ready']);
    expect(heard.refused[0]).toMatchObject({ kind: 'discarded', reason: 'settling' });
    expect(heard.items[0]).toMatchObject({ role: 'platform', mass: { value: 12340 }, stability: 'stable' });
    expect(heard.link.counters).toMatchObject({ opens: 1, losses: 0, frames: 1 });
  });

  it('finds where frames begin and how wide they are while it settles, so that the next one counts', async () => {
    rig.feed(LINE);
    const heard = platform();
    await rig.until(() => heard.status() === 'ready', 2000);
    const reasons = heard.refused.map((refused) => (refused.kind === 'bad' ? refused.fault : refused.reason));
    expect(new Set(reasons)).toEqual(new Set(['settling']));
    expect(heard.link.counters.badFrames).toBe(0);
  });

  it('is lost with a reason while nothing is plugged in, and ready within 3 s of the plug', async () => {
    await rig.cable.pull();
    rig.feed(LINE);
    const heard = platform();
    await rig.wait(1500);
    expect(heard.link.state).toMatchObject({ status: 'lost', reason: 'not-found' });
    // The tries go on, but only the first one is news.
    expect(heard.states).toHaveLength(1);
    await rig.cable.plug();
    expect(await rig.until(() => heard.status() === 'ready', 4000)).toBeLessThan(3000);
  });

  it('is lost at once when the cable is pulled, and gives nothing more', async () => {
    rig.feed(LINE);
    const heard = platform();
    await rig.until(() => heard.status() === 'ready', 2000);
    await rig.cable.pull();
    expect(await rig.until(() => heard.status() === 'lost', 5000)).toBeLessThan(500);
    expect(heard.link.state).toMatchObject({
      reason: 'disconnected',
      remedy: expect.stringContaining('cable'),
    });
    const before = heard.items.length;
    await rig.wait(600);
    expect(heard.items).toHaveLength(before);
    expect(heard.link.counters.losses).toBe(1);
  });

  it('is ready again within 3 s of the plug, on a new connection', async () => {
    rig.feed(LINE);
    const heard = platform();
    await rig.until(() => heard.status() === 'ready', 2000);
    await rig.cable.pull();
    await rig.until(() => heard.status() === 'lost', 5000);
    await rig.wait(700);
    // From here on the port exists again: the three seconds begin.
    await rig.cable.plug();
    expect(await rig.until(() => heard.status() === 'ready', 4000)).toBeLessThan(3000);
    expect(heard.link.counters).toMatchObject({ opens: 2, losses: 1 });
  });

  it('never joins the half line before a pull to the half line after it', async () => {
    const heard = platform();
    const stop = rig.feed(LINE);
    await rig.until(() => heard.status() === 'ready', 2000);
    stop();
    rig.send('ST,GS,+0099');
    await rig.wait(50);
    await rig.cable.pull();
    await rig.until(() => heard.status() === 'lost', 5000);
    await rig.cable.plug();
    await rig.until(() => heard.link.counters.opens === 2, 3000);
    await rig.wait(300);
    rig.send('.99kg\r\n');
    rig.feed(LINE);
    await rig.until(() => heard.status() === 'ready', 3000);
    expect(new Set(heard.items.map((reading) => reading.mass.value))).toEqual(new Set([12340]));
  });

  it('never joins half reads of the wand either, whose very first line counts', async () => {
    const heard = wand();
    await rig.until(() => heard.status() === 'ready', 2000);
    rig.send('LA 982 0000');
    await rig.wait(50);
    await rig.cable.pull();
    await rig.until(() => heard.status() === 'lost', 5000);
    await rig.cable.plug();
    await rig.until(() => heard.link.counters.opens === 2 && heard.status() === 'ready', 3000);
    rig.send('01088420\r\nLA 964 000000123456\r\n');
    await rig.until(() => heard.items.length > 0, 1000);
    expect(heard.items).toMatchObject([{ kind: 'tag', tag: '964000000123456' }]);
    expect(heard.link.counters.badFrames).toBe(1);
  });

  it('gives the first line of a wand that has said nothing since it was opened', async () => {
    const heard = wand();
    await rig.until(() => heard.status() === 'ready', 2000);
    await rig.wait(1500);
    expect(heard.status()).toBe('ready');
    rig.send('LA 982 000001088420\r\n');
    await rig.until(() => heard.items.length > 0, 1000);
    expect(heard.items).toMatchObject([{ kind: 'tag', tag: '982000001088420' }]);
  });

  it('is silent a second after the last frame, and ready with the next ones', async () => {
    const stop = rig.feed(LINE);
    const heard = platform();
    await rig.until(() => heard.status() === 'ready', 2000);
    stop();
    const silentAfter = await rig.until(() => heard.status() === 'silent', 2000);
    expect(silentAfter).toBeGreaterThan(850);
    expect(silentAfter).toBeLessThan(1250);
    rig.feed(LINE);
    expect(await rig.until(() => heard.status() === 'ready', 1000)).toBeLessThan(500);
    expect(heard.link.counters.opens).toBe(1);
  });

  it('takes broken frames for silence', async () => {
    const stop = rig.feed(LINE);
    const heard = platform();
    await rig.until(() => heard.status() === 'ready', 2000);
    stop();
    rig.feed('ST,GS,+00x2.34kg\r\n');
    expect(await rig.until(() => heard.status() === 'silent', 2000)).toBeLessThan(1250);
    expect(heard.link.counters.badFrames).toBeGreaterThan(5);
  });

  it('closes and opens anew after 3 s more of silence', async () => {
    const stop = rig.feed(LINE);
    const heard = platform();
    await rig.until(() => heard.status() === 'ready', 2000);
    stop();
    await rig.until(() => heard.link.counters.opens === 2, 6000);
    expect(heard.states.map((state) => state.status)).toEqual([
      'settling',
      'ready',
      'silent',
      'lost',
      'settling',
    ]);
    expect(heard.states[3]).toMatchObject({ reason: 'no-frames', remedy: expect.stringContaining('speed') });
    rig.feed(LINE);
    await rig.until(() => heard.status() === 'ready', 2000);
  });

  it('asks a polled scale only when it has settled, and one question at a time', async () => {
    const heard = bench();
    await rig.until(() => heard.status() === 'settling', 1000);
    await rig.wait(150);
    expect(rig.received()).toBe('');
    await rig.until(() => rig.received() === '\nW\r', 500);
    rig.send('\n 1G         943g  \r');
    await rig.until(() => heard.status() === 'ready', 500);
    expect(heard.items).toMatchObject([{ role: 'bench', mass: { value: 943 }, division: { value: 1 } }]);
    await rig.until(() => rig.received() === '\nW\r\nW\r', 300);
    await rig.wait(250);
    expect(rig.received()).toBe('\nW\r\nW\r');
  });

  it('asks on after a refusal, without being ready', async () => {
    const heard = bench();
    await rig.until(() => rig.received() === '\nW\r', 1500);
    rig.send('\n?\r');
    await rig.until(() => rig.received() === '\nW\r\nW\r', 300);
    expect(heard.status()).toBe('settling');
    expect(heard.refused.at(-1)).toEqual({ kind: 'bad', fault: 'command-refused', text: '?' });
  });

  it('sends nothing from before a pull after the plug', async () => {
    const heard = bench();
    await rig.until(() => rig.received() === '\nW\r', 1500);
    await rig.cable.pull();
    await rig.wait(1000);
    await rig.cable.plug();
    await rig.until(() => heard.link.counters.opens === 2, 3000);
    await rig.wait(150);
    expect(rig.received()).toBe('');
    await rig.until(() => rig.received().length > 0, 1000);
    expect(rig.received()).toBe('\nW\r');
  });

  it('sends a command at once while ready, and forgets it at any other time', async () => {
    const heard = bench();
    expect(heard.link.send(bytes('\nZ\r'))).toBe(false);
    await rig.until(() => rig.received() === '\nW\r', 1500);
    expect(heard.link.send(bytes('\nZ\r'))).toBe(false);
    rig.send('\n 1G         943g  \r');
    await rig.until(() => heard.status() === 'ready', 500);
    expect(heard.link.send(bytes('\nT\r'))).toBe(true);
    await rig.until(() => rig.received().includes('\nT\r'), 500);
    await rig.cable.pull();
    await rig.until(() => heard.status() === 'lost', 5000);
    expect(heard.link.send(bytes('\nC\r'))).toBe(false);
    await rig.cable.plug();
    await rig.until(() => rig.received().length > 0, 3000);
    await rig.wait(500);
    expect(rig.received()).toMatch(/^(\nW\r)+$/);
    await heard.link.stop();
    expect(heard.link.send(bytes('\nZ\r'))).toBe(false);
  });

  it('shows no line that waited in the port from before it was opened', async () => {
    for (let old = 0; old < 400; old += 1) rig.send('ST,GS,+0099.99kg\r\n');
    await rig.wait(100);
    rig.feed(LINE);
    const heard = platform();
    await rig.until(() => heard.items.length > 3, 3000);
    expect(new Set(heard.items.map((reading) => reading.mass.value))).toEqual(new Set([12340]));
  });

  it('waits for a port that another one holds, and takes it when it is free', async () => {
    rig.feed(LINE);
    const first = platform();
    await rig.until(() => first.status() === 'ready', 2000);
    const second = platform();
    await rig.until(() => second.status() === 'lost', 1000);
    expect(second.link.state).toMatchObject({
      reason: 'in-use',
      remedy: expect.stringContaining('Another program'),
    });
    expect(first.status()).toBe('ready');
    await first.link.stop();
    expect(await rig.until(() => second.status() === 'ready', 4000)).toBeLessThan(3000);
  });

  it('says and sends nothing once stopped, and frees the port', async () => {
    const heard = bench();
    await rig.until(() => rig.received() === '\nW\r', 1500);
    await heard.link.stop();
    const said = heard.states.length;
    await rig.wait(1200);
    expect(rig.received()).toBe('\nW\r');
    expect(heard.states).toHaveLength(said);
    const again = await rig.openPort(rig.cable.path, 9600);
    await again.close();
    if (rig.timers instanceof ManualTimers) expect(rig.timers.pending).toBe(0);
  });

  it('can be stopped while it opens, while it waits to try again, and twice', async () => {
    const opening = platform();
    await opening.link.stop();
    await rig.cable.pull();
    const waiting = platform();
    await rig.wait(150);
    expect(waiting.status()).toBe('lost');
    await waiting.link.stop();
    await waiting.link.stop();
    await rig.cable.plug();
    await rig.wait(1300);
    expect([opening.link.counters.opens, waiting.link.counters.opens]).toEqual([0, 0]);
    await (await rig.openPort(rig.cable.path, 9600)).close();
  });

  it('leaves nothing behind in 25 pulls and plugs', async () => {
    const heard = wand();
    await rig.until(() => heard.status() === 'ready', 2000);
    const held = () =>
      rig.timers instanceof ManualTimers ? rig.timers.pending : readdirSync('/proc/self/fd').length;
    const before = held();
    for (let cycle = 1; cycle <= 25; cycle += 1) {
      await rig.cable.pull();
      await rig.until(() => heard.status() === 'lost', 5000);
      await rig.cable.plug();
      await rig.until(() => heard.status() === 'ready', 3000);
    }
    expect(heard.link.counters).toMatchObject({ opens: 26, losses: 25 });
    expect(held()).toBeLessThanOrEqual(before + 1);
  });
});

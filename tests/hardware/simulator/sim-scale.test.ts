import { describe, expect, it } from 'vitest';
import { grams, kilograms } from '../../../core/quantity/mass.ts';
import { stall } from '../../../hardware/simulator/faults.ts';
import { createMemoryCable } from '../../../hardware/simulator/memory-cable.ts';
import { createSimScale, type SimScaleOptions } from '../../../hardware/simulator/sim-scale.ts';
import { bytes } from '../bytes.ts';
import { ManualTimers } from '../manual-timers.ts';

/** A scale in memory with a test at the near end. */
async function setUp(format: 'sma' | 'st-gs', options: Partial<SimScaleOptions> = {}) {
  const timers = new ManualTimers();
  const scale = createSimScale({
    timers,
    format,
    face: { unit: 'kg', division: grams(50) },
    capacity: kilograms(150),
    load: () => grams(12_340),
    changing: () => false,
    ...options,
  });
  const cable = createMemoryCable('memory:scale', timers, scale.attach);
  const port = await cable.openPort('memory:scale', 9600);
  let heard = '';
  port.onData((chunk) => {
    heard += Buffer.from(chunk).toString('latin1');
  });
  const take = () => {
    const all = heard;
    heard = '';
    return all;
  };
  return { timers, scale, cable, take, ask: (text: string) => port.write(bytes(text)) };
}

describe('a simulated scale that sends by itself', () => {
  it('sends ten lines a second, to the nearest division', async () => {
    const { timers, take } = await setUp('st-gs');
    await timers.advance(990);
    expect(take()).toBe('ST,GS,+  12.35kg\r\n'.repeat(10));
  });

  it('flags motion and tare, and shows over and under at its ends', async () => {
    let load = 12_340;
    const { timers, scale, take } = await setUp('st-gs', { load: () => grams(load) });
    const next = async () => {
      await timers.advance(1500);
      take();
      await timers.advance(100);
      return take();
    };
    expect(await next()).toBe('ST,GS,+  12.35kg\r\n');
    scale.pressTare();
    expect(await next()).toBe('ST,NT,+   0.00kg\r\n');
    load = 0;
    expect(await next()).toBe('ST,NT,-  12.35kg\r\n');
    scale.clearTare();
    expect(await next()).toBe('ST,GS,+   0.00kg\r\n');
    load = 150_100;
    expect(await next()).toMatch(/^OL,GS,\+/);
    load = -5000;
    expect(await next()).toMatch(/^OL,GS,-/);
    load = 20_000;
    await timers.advance(100);
    expect(take()).toBe('US,GS,+  20.00kg\r\n');
  });

  it('answers no questions', async () => {
    const { timers, take, ask } = await setUp('st-gs');
    ask('\nW\r');
    await timers.advance(99);
    expect(take()).toBe('ST,GS,+  12.35kg\r\n');
  });

  it('is silent while a fault stalls it, and after it was stopped for good', async () => {
    const { timers, scale, take } = await setUp('st-gs');
    await timers.advance(50);
    take();
    scale.disturb(stall());
    await timers.advance(500);
    expect(take()).toBe('');
    scale.disturb(null);
    await timers.advance(100);
    expect(take()).not.toBe('');
    scale.stop();
    await timers.advance(500);
    expect(take()).toBe('');
    expect(timers.pending).toBe(0);
  });
});

describe('a simulated scale that is asked', () => {
  const face = { unit: 'g', division: grams(1) } as const;

  it('answers one question with one reply, soon after, and says nothing by itself', async () => {
    const { timers, take, ask } = await setUp('sma', { face, load: () => grams(943.2) });
    await timers.advance(1000);
    expect(take()).toBe('');
    ask('\nW\r');
    await timers.advance(10);
    expect(take()).toBe('');
    await timers.advance(30);
    expect(take()).toBe('\n 1G         943g  \r');
  });

  // The four parser rules of a public note on the protocol.
  it.each([
    ['W\r', 0, 'a command without its LF'],
    ['xyz\nW\rxyz', 1, 'bytes outside a frame'],
    ['\nW\x1b\nW\r', 1, 'a command given up half way'],
    ['\nW\r\nW\r', 2, 'two commands'],
  ])('to %j gives %i replies (%s)', async (sent, replies) => {
    const { timers, take, ask } = await setUp('sma', { face });
    await timers.advance(1000);
    for (const byte of sent) ask(byte);
    await timers.advance(100);
    expect(take()).toBe('\n 1G       12340g  \r'.repeat(replies));
  });

  it('takes and clears a tare by command, shows zero as such, and refuses what it does not know', async () => {
    const { timers, take, ask } = await setUp('sma', { face });
    const reply = async (command: string) => {
      ask(`\n${command}\r`);
      await timers.advance(1200);
      return take();
    };
    await timers.advance(1200);
    expect(await reply('T')).toBe('\nZ1N           0g  \r');
    expect(await reply('C')).toBe('\n 1G       12340g  \r');
    expect(await reply('Q')).toBe('\n?\r');
  });
});

import { describe, expect, it } from 'vitest';
import { grams } from '../../../core/quantity/mass.ts';
import { SMA } from '../../../hardware/scale/sma.ts';
import { createMemoryCable } from '../../../hardware/simulator/memory-cable.ts';
import { createSimBench } from '../../../hardware/simulator/sim-bench.ts';
import { bytes } from '../bytes.ts';
import { ManualTimers } from '../manual-timers.ts';

async function setUp() {
  const timers = new ManualTimers();
  const bench = createSimBench({ timers });
  const cable = createMemoryCable('memory:b', timers, bench.attach);
  const port = await cable.openPort('memory:b', 9600);
  const framer = SMA.createFramer();
  let shown = '';
  port.onData((chunk) => {
    for (const framed of framer.push(chunk)) {
      const decoded = framed.kind === 'line' ? SMA.decode(framed.text, 'bench', 0) : null;
      if (decoded?.kind === 'reading') shown = `${decoded.reading.mass.value} ${decoded.reading.stability}`;
    }
  });
  /** What the bench shows so much later, such as `212 stable`. */
  async function shows(ms: number): Promise<string> {
    await timers.advance(ms - 50);
    port.write(bytes('\nW\r'));
    await timers.advance(50);
    return shown;
  }
  return { bench, shows };
}

describe('the simulated bench', () => {
  it('shows a jug once it has come to rest, and nothing when it is lifted', async () => {
    const { bench, shows } = await setUp();
    expect(await shows(200)).toBe('0 stable');
    bench.placeJug(grams(212));
    expect(await shows(250)).toMatch(/moving$/);
    expect(await shows(1600)).toBe('212 stable');
    expect(bench.liftJug()).toEqual(grams(212));
    expect(await shows(2000)).toBe('0 stable');
  });

  it('shows water arriving at its rate, moving all the while, up to its total', async () => {
    const { bench, shows } = await setUp();
    bench.placeJug(grams(200));
    await shows(2000);
    bench.pour(grams(40), grams(400));
    const half = await shows(5050);
    expect(half).toMatch(/ moving$/);
    expect(Math.abs(Number.parseFloat(half) - 400)).toBeLessThan(6);
    expect(await shows(7000)).toBe('600 stable');
  });

  it('shows even a trickle as moving', async () => {
    const { bench, shows } = await setUp();
    bench.placeJug(grams(200));
    await shows(2000);
    bench.pour(grams(0.2));
    expect(await shows(3000)).toMatch(/^20[01] moving$/);
  });

  it('stops a stream when told, and when another begins, and keeps what has come', async () => {
    const { bench, shows } = await setUp();
    bench.placeJug(grams(200));
    await shows(2000);
    bench.pour(grams(50));
    await shows(2000);
    bench.pour(grams(10));
    await shows(1000);
    bench.stopPour();
    expect(await shows(2000)).toBe('310 stable');
    bench.stopPour();
    expect(await shows(500)).toBe('310 stable');
    expect(() => bench.pour(grams(0))).toThrow(RangeError);
  });

  it('shows a packet of powder arrive', async () => {
    const { bench, shows } = await setUp();
    bench.placeJug(grams(1200));
    await shows(2000);
    bench.addPowder(grams(52));
    expect(await shows(600)).toMatch(/moving$/);
    expect(await shows(3000)).toBe('1252 stable');
  });

  it('lifts the jug with all that went in, and lets it be set down again', async () => {
    const { bench, shows } = await setUp();
    bench.placeJug(grams(212));
    await shows(1000);
    bench.pour(grams(100), grams(300));
    bench.addPowder(grams(52));
    await shows(4000);
    const held = bench.liftJug();
    expect(held.value).toBeCloseTo(564, 9);
    expect(await shows(2000)).toBe('0 stable');
    bench.placeJug(held);
    expect(await shows(2000)).toBe('564 stable');
    expect(() => bench.placeJug(grams(1))).toThrow(/stands/);
  });

  it('ends a stream when the jug is lifted', async () => {
    const { bench, shows } = await setUp();
    bench.placeJug(grams(212));
    bench.pour(grams(100));
    await shows(1000);
    expect(bench.liftJug().value).toBeCloseTo(312, 9);
    expect(await shows(3000)).toBe('0 stable');
  });
});

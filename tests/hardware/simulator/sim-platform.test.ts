import { describe, expect, it } from 'vitest';
import { grams, kilograms } from '../../../core/quantity/mass.ts';
import type { Reading } from '../../../core/weighing/reading.ts';
import { scaleDriver } from '../../../hardware/scale/scale-driver.ts';
import { ST_GS } from '../../../hardware/scale/st-gs.ts';
import { createMemoryCable } from '../../../hardware/simulator/memory-cable.ts';
import { createSimPlatform } from '../../../hardware/simulator/sim-platform.ts';
import { ManualTimers } from '../manual-timers.ts';

async function setUp(seed = 1) {
  const timers = new ManualTimers();
  const platform = createSimPlatform({ timers, seed });
  const cable = createMemoryCable('memory:p', timers, platform.attach);
  const port = await cable.openPort('memory:p', 9600);
  const readings: Reading[] = [];
  port.onData(
    scaleDriver(ST_GS, 'platform', () => timers.now()).openSession((one) => {
      if (one.kind === 'item') readings.push(one.item);
    }),
  );
  await timers.advance(1000);
  return { timers, platform, readings, last: () => readings.at(-1)?.mass.value };
}

describe('the simulated platform', () => {
  it('stands at zero, carries the animal led on, and stands at zero when it has left', async () => {
    const { timers, platform, readings, last } = await setUp();
    expect(readings.at(-1)).toMatchObject({ mass: { value: 0 }, stability: 'stable' });
    platform.leadOn({ mass: kilograms(31.4), grade: 'calm' });
    await timers.advance(3000);
    expect(Math.abs((last() ?? 0) - 31_400)).toBeLessThan(700);
    platform.walkOff();
    await timers.advance(1800);
    expect(last()).toBe(0);
  });

  it('shows multiples of 50 g only', async () => {
    const { timers, platform, readings } = await setUp();
    platform.leadOn({ mass: kilograms(31.4), grade: 'restless' });
    await timers.advance(10_000);
    expect(readings.every((reading) => Number.isInteger(reading.mass.value / 50))).toBe(true);
    expect(new Set(readings.map((reading) => reading.mass.value)).size).toBeGreaterThan(10);
    expect(readings.filter((reading) => reading.stability === 'moving').length).toBeGreaterThan(50);
  });

  it('carries two animals and the mud between them', async () => {
    const { timers, platform, last } = await setUp();
    platform.leaveOn(grams(450));
    await timers.advance(200);
    expect(last()).toBe(450);
    platform.leadOn({ mass: kilograms(30), grade: 'calm' });
    platform.leadOn({ mass: kilograms(20), grade: 'calm' });
    await timers.advance(3000);
    expect(Math.abs((last() ?? 0) - 50_450)).toBeLessThan(1500);
    platform.walkOff();
    platform.leaveOn(grams(-450));
    await timers.advance(2000);
    expect(last()).toBe(0);
  });

  it('says over its capacity that it is over', async () => {
    const { timers, platform, readings } = await setUp();
    platform.leaveOn(kilograms(151));
    await timers.advance(200);
    expect(readings.at(-1)).toMatchObject({ fault: 'over', mass: { value: 0 } });
  });

  it('moves its animals the same way for the same seed', async () => {
    const run = async (seed: number) => {
      const { timers, platform, readings } = await setUp(seed);
      platform.leadOn({ mass: kilograms(40), grade: 'violent' });
      await timers.advance(5000);
      return readings.map((reading) => reading.mass.value);
    };
    expect(await run(3)).toEqual(await run(3));
    expect(await run(3)).not.toEqual(await run(4));
  });
});

import { tmpdir } from 'node:os';
import { describe, expect, it } from 'vitest';
import type { Reading } from '../../../core/weighing/reading.ts';
import { scaleDriver } from '../../../hardware/scale/scale-driver.ts';
import { SMA } from '../../../hardware/scale/sma.ts';
import { ST_GS } from '../../../hardware/scale/st-gs.ts';
import { createLink } from '../../../hardware/serial/link.ts';
import type { LinkDriver } from '../../../hardware/serial/link-driver.ts';
import { createSimulatedBarn } from '../../../hardware/simulator/barn.ts';
import { startLivelyBarn } from '../../../hardware/simulator/lively-barn.ts';
import { type WandRead, wandDriver } from '../../../hardware/wand/wand-driver.ts';
import { ManualTimers } from '../manual-timers.ts';

describe('a lively barn', () => {
  it('reads a tag before each animal steps on, fills a jug beside it, and stops when told', async () => {
    const timers = new ManualTimers();
    const barn = await createSimulatedBarn({ timers, seed: 1, folder: tmpdir(), medium: 'memory' });
    const platform: Reading[] = [];
    const bench: Reading[] = [];
    const reads: WandRead[] = [];
    const listen = <Item>(path: string, driver: LinkDriver<Item>, into: Item[]) =>
      createLink({
        path,
        baud: 9600,
        driver,
        timers,
        openPort: barn.openPort,
        random: () => 0,
        onState: () => {},
        onItem: (item) => into.push(item),
      });
    const now = () => timers.now();
    const links = [
      listen(barn.paths.platform, scaleDriver(ST_GS, 'platform', now), platform),
      listen(barn.paths.bench, scaleDriver(SMA, 'bench', now), bench),
      listen(barn.paths.wand, wandDriver(now), reads),
    ];
    const said: string[] = [];
    const lively = startLivelyBarn(barn, timers, 1, (line) => said.push(line));
    await timers.advance(60_000);

    expect(reads.length).toBeGreaterThanOrEqual(2);
    expect(reads.every((read) => read.kind === 'tag')).toBe(true);
    const firstOn = platform.find((reading) => reading.mass.value > 5000);
    expect(firstOn?.at).toBeGreaterThan(reads[0]?.at ?? Number.POSITIVE_INFINITY);
    const full = bench.findIndex((reading) => reading.mass.value > 1000);
    expect(full).toBeGreaterThan(0);
    expect(bench.slice(full).some((reading) => reading.mass.value === 0)).toBe(true);
    expect(said.filter((line) => line.startsWith('platform:')).length).toBeGreaterThanOrEqual(4);

    lively.stop();
    const lines = said.length;
    await Promise.all(links.map((link) => link.stop()));
    await barn.stop();
    await timers.advance(60_000);
    expect(said).toHaveLength(lines);
    expect(timers.pending).toBe(0);
  });
});

import { describe, expect, it } from 'vitest';
import type { Reading } from '../../../core/weighing/reading.ts';
import { scaleDriver } from '../../../hardware/scale/scale-driver.ts';
import { SMA } from '../../../hardware/scale/sma.ts';
import { ST_GS } from '../../../hardware/scale/st-gs.ts';
import type { Received } from '../../../hardware/serial/link-driver.ts';
import { bytes } from '../bytes.ts';

const LINE = 'ST,GS,+0012.34kg\r\n';

function run(profile: typeof SMA, ...chunks: string[]): Received<Reading>[] {
  const all: Received<Reading>[] = [];
  const push = scaleDriver(profile, 'platform', () => 5000).openSession((one) => all.push(one));
  for (const chunk of chunks) push(bytes(chunk));
  return all;
}

/** Each as one word: the mass in grams, the fault, or the reason. */
function told(all: readonly Received<Reading>[]): (number | string)[] {
  return all.map((one) =>
    one.kind === 'item' ? one.item.mass.value : one.kind === 'bad' ? one.fault : one.reason,
  );
}

describe('the scale driver', () => {
  it('stamps readings with its role and the time they arrived', () => {
    const [reading] = run(SMA, '\n 1G         943g  \r');
    expect(reading).toMatchObject({
      kind: 'item',
      item: { role: 'platform', at: 5000, mass: { value: 943 } },
    });
  });

  it('holds continuous lines back until three had one length', () => {
    expect(told(run(ST_GS, `kg\r\n${LINE}${LINE}${LINE}`))).toEqual([
      'unsynchronised',
      'odd-width',
      'odd-width',
      12340,
    ]);
  });

  it('refuses a continuous line that lost a digit though it reads well', () => {
    const all = told(
      run(ST_GS, '\r\n', LINE, LINE, LINE, 'ST,GS,+012.34kg\r\n', 'ST,GS,+001.34kg\r\n', LINE),
    );
    expect(all.slice(3)).toEqual([12340, 'odd-width', 'odd-width', 12340]);
  });

  it('passes broken and foreign frames on by name', () => {
    expect(told(run(SMA, '\n?\r', '\n 1X       5.025lb \r', '\n 1T       0.200kg_\r'))).toEqual([
      'command-refused',
      'bad-header',
      'not-a-weight',
    ]);
  });

  it('starts afresh with each session: nothing of the one before is joined on', () => {
    const driver = scaleDriver(SMA, 'bench', () => 0);
    const all: Received<Reading>[] = [];
    driver.openSession((one) => all.push(one))(bytes('\n 1G         9'));
    driver.openSession((one) => all.push(one))(bytes('43g  \r\n 1G           7g  \r'));
    expect(told(all)).toEqual(['outside-frame', 7]);
  });
});

import { describe, expect, it } from 'vitest';
import type { Received } from '../../../hardware/serial/link-driver.ts';
import { type WandRead, wandDriver } from '../../../hardware/wand/wand-driver.ts';
import { bytes } from '../bytes.ts';

async function turn(): Promise<void> {
  await new Promise((resolve) => setImmediate(resolve));
}

const ANIMAL = { animal: true, retag: null, userInfo: null, extraBlock: null };

describe('the wand driver', () => {
  it('tells a tag with its time, once in 3 s', async () => {
    let now = 1000;
    const all: Received<WandRead>[] = [];
    const push = wandDriver(() => now).openSession((one) => all.push(one));
    push(bytes('LA 982 000001088420\r\nLA 982 000001088420\r\n'));
    await turn();
    now = 4000;
    push(bytes('LA 982 000001088420\r\n'));
    await turn();
    expect(all).toEqual([
      { kind: 'item', item: { kind: 'tag', tag: '982000001088420', marks: ANIMAL, at: 1000 } },
      { kind: 'item', item: { kind: 'tag', tag: '982000001088420', marks: ANIMAL, at: 4000 } },
    ]);
  });

  it('tells why a transponder is refused, calls other lines bad and passes over empty ones', async () => {
    const all: Received<WandRead>[] = [];
    const push = wandDriver(() => 5).openSession((one) => all.push(one));
    push(bytes('R 0006 0000000000123456\r\n\r\nhello\r\n'));
    await turn();
    expect(all).toEqual([
      { kind: 'item', item: { kind: 'refused', why: 'industrial', text: 'R 0006 0000000000123456', at: 5 } },
      { kind: 'bad', fault: 'unknown-line', text: 'hello' },
    ]);
  });

  it('does not join the half line of one session to the next', async () => {
    const driver = wandDriver(() => 0);
    const all: Received<WandRead>[] = [];
    driver.openSession((one) => all.push(one))(bytes('LA 982 0000'));
    driver.openSession((one) => all.push(one))(bytes('01088420\r\n'));
    await turn();
    expect(all).toEqual([{ kind: 'bad', fault: 'unknown-line', text: '01088420' }]);
  });

  it('does not repeat a tag because the cable was out for a moment', async () => {
    const driver = wandDriver(() => 0);
    const all: Received<WandRead>[] = [];
    for (let session = 0; session < 2; session += 1) {
      driver.openSession((one) => all.push(one))(bytes('964000000123456\r\n'));
      await turn();
    }
    expect(all).toHaveLength(1);
  });
});

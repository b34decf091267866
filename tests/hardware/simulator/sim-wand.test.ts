import { describe, expect, it } from 'vitest';
import { createMemoryCable } from '../../../hardware/simulator/memory-cable.ts';
import { createSimWand } from '../../../hardware/simulator/sim-wand.ts';
import { ManualTimers } from '../manual-timers.ts';

async function setUp() {
  const timers = new ManualTimers();
  const wand = createSimWand();
  const cable = createMemoryCable('memory:w', timers, wand.attach);
  const heard: string[] = [];
  const open = async () => {
    const port = await cable.openPort('memory:w', 9600);
    port.onData((chunk) => heard.push(Buffer.from(chunk).toString('latin1')));
  };
  await open();
  return { timers, wand, cable, heard, open };
}

describe('the simulated wand', () => {
  it('sends the short line mode for a tag, and any other line as it is', async () => {
    const { timers, wand, heard } = await setUp();
    wand.presentTag('982000001088420');
    wand.sendLine('LI');
    await timers.advance(0);
    expect(heard).toEqual(['LA 982 000001088420\r\n', 'LI\r\n']);
  });

  it('loses what it reads while its cable is out, and goes on when it is back', async () => {
    const { timers, wand, cable, heard, open } = await setUp();
    await cable.pull();
    wand.presentTag('982000001088420');
    await cable.plug();
    await open();
    wand.presentTag('982000000255895');
    await timers.advance(0);
    expect(heard).toEqual(['LA 982 000000255895\r\n']);
  });

  it('says nothing once stopped', async () => {
    const { timers, wand, heard } = await setUp();
    wand.stop();
    wand.presentTag('982000001088420');
    await timers.advance(10);
    expect(heard).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import type { WandForm } from '../../../hardware/simulator/encode-wand.ts';
import { createMemoryCable } from '../../../hardware/simulator/memory-cable.ts';
import { createSimWand } from '../../../hardware/simulator/sim-wand.ts';
import { ManualTimers } from '../manual-timers.ts';

async function setUp(form?: WandForm) {
  const timers = new ManualTimers();
  const wand = createSimWand(form);
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

  it('tells in the full line mode what the transponder holds beside its number', async () => {
    const { timers, wand, heard } = await setUp('full');
    wand.presentTag('060030207938416', { reserved: 14339, extraBlock: true });
    await timers.advance(0);
    expect(heard).toEqual(['LA 14339 1 060 030207938416\r\n']);
  });

  it('hears a published telegram, and calls the same one invalid with a bit wrong', async () => {
    const { timers, wand, heard } = await setUp();
    wand.presentTelegram('00339a080402079f8040797788040201');
    wand.presentTelegram('00339a080402079f8040797788040200');
    wand.presentTelegram('00339a080402079f8042797788040201');
    await timers.advance(0);
    expect(heard).toEqual(['LA 999 000000001337\r\n', 'LI\r\n', 'LI\r\n']);
  });

  it('has no tag for a number that no transponder can hold', async () => {
    const { wand } = await setUp();
    expect(() => wand.presentTag('982274877906944')).toThrow(RangeError);
    expect(() => wand.presentTag('98200000108842')).toThrow(RangeError);
  });

  it('says nothing once stopped', async () => {
    const { timers, wand, heard } = await setUp();
    wand.stop();
    wand.presentTag('982000001088420');
    await timers.advance(10);
    expect(heard).toEqual([]);
  });
});

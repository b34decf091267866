import { describe, expect, it } from 'vitest';
import type { Connection } from '../../../hardware/serial/connection.ts';
import { createMemoryCable } from '../../../hardware/simulator/memory-cable.ts';
import { bytes } from '../bytes.ts';
import { ManualTimers } from '../manual-timers.ts';

function lay() {
  const timers = new ManualTimers();
  const fars: Connection[] = [];
  const cable = createMemoryCable('memory:a', timers, (connection) => fars.push(connection));
  return { timers, fars, cable };
}

function textOf(connection: Connection): { text: string } {
  const got = { text: '' };
  connection.onData((chunk) => {
    got.text += Buffer.from(chunk).toString('latin1');
  });
  return got;
}

describe('a cable in memory', () => {
  it('carries bytes both ways, in order, and never at once', async () => {
    const { timers, fars, cable } = lay();
    const near = await cable.openPort('memory:a', 9600);
    const [far] = fars;
    if (far === undefined) throw new Error('not plugged');
    const [atNear, atFar] = [textOf(near), textOf(far)];
    near.write(bytes('ques'));
    near.write(bytes('tion'));
    far.write(bytes('answer'));
    expect(atFar.text).toBe('');
    await timers.advance(0);
    expect([atFar.text, atNear.text]).toEqual(['question', 'answer']);
  });

  it('carries what the bytes were when they were written', async () => {
    const { timers, fars, cable } = lay();
    const near = await cable.openPort('memory:a', 9600);
    const got = textOf(near);
    const reused = bytes('first');
    fars[0]?.write(reused);
    reused.fill(0x78);
    await timers.advance(0);
    expect(got.text).toBe('first');
  });

  it('opens only its own name, once at a time, and only while plugged', async () => {
    const { cable } = lay();
    const first = await cable.openPort('memory:a', 9600);
    await expect(cable.openPort('memory:a', 9600)).rejects.toMatchObject({ code: 'in-use' });
    await expect(cable.openPort('memory:b', 9600)).rejects.toMatchObject({ code: 'not-found' });
    await first.close();
    await cable.openPort('memory:a', 9600);
    await cable.pull();
    await expect(cable.openPort('memory:a', 9600)).rejects.toMatchObject({ code: 'not-found' });
  });

  it('ends both ends when pulled, once, and loses what was under way', async () => {
    const { timers, fars, cable } = lay();
    const near = await cable.openPort('memory:a', 9600);
    const got = textOf(near);
    const ends: string[] = [];
    near.onClose(() => ends.push('near'));
    fars[0]?.onClose(() => ends.push('far'));
    fars[0]?.write(bytes('lost'));
    await cable.pull();
    await cable.pull();
    await near.close();
    await timers.advance(10);
    expect(ends).toEqual(['near', 'far']);
    expect(got.text).toBe('');
  });

  it('joins new ends when plugged again, deaf to the old ones', async () => {
    const { timers, fars, cable } = lay();
    await cable.pull();
    await cable.plug();
    await cable.plug();
    expect(fars).toHaveLength(2);
    const got = textOf(await cable.openPort('memory:a', 9600));
    fars[0]?.write(bytes('old'));
    fars[1]?.write(bytes('new'));
    await timers.advance(0);
    expect(got.text).toBe('new');
  });

  it('loses what a device says while nobody has the near end open', async () => {
    const { timers, fars, cable } = lay();
    fars[0]?.write(bytes('early'));
    const near = await cable.openPort('memory:a', 9600);
    const got = textOf(near);
    await timers.advance(10);
    expect(got.text).toBe('');
  });
});

import { describe, expect, it } from 'vitest';
import { endReadsAtHangUp, type PolledPort, type ReadFrom } from '../../../hardware/serial/hang-up.ts';

function again(): Error {
  return Object.assign(new Error('try again'), { code: 'EAGAIN' });
}

/** A port whose reads end as told, one after the other, and whose poller speaks when the test says so. */
function setUp(ends: readonly (number | Error)[]) {
  const left = [...ends];
  const waiting: ((error: Error | null) => void)[] = [];
  const port = {
    fd: 7 as number | null,
    poller: { once: (_: 'readable', tell: (error: Error | null) => void) => void waiting.push(tell) },
    read: () => Promise.reject(new Error('the read of the library was not replaced')),
  };
  const readFrom: ReadFrom = async () => {
    const end = left.shift() ?? new Error('read once too often');
    if (end instanceof Error) throw end;
    return { bytesRead: end };
  };
  endReadsAtHangUp(port, readFrom);
  return { port: port as typeof port & PolledPort, waiting, left };
}

const buffer = Buffer.alloc(16);

describe('a read of an open port', () => {
  it('gives what there is', async () => {
    const { port } = setUp([5]);
    expect(await port.read(buffer, 0, 16)).toEqual({ buffer, bytesRead: 5 });
  });

  it('waits where there is nothing yet, and then gives it', async () => {
    const { port, waiting } = setUp([again(), 3]);
    const reading = port.read(buffer, 0, 16);
    await expect.poll(() => waiting.length).toBe(1);
    waiting[0]?.(null);
    expect(await reading).toMatchObject({ bytesRead: 3 });
  });

  it('fails at once on a line that hung up, and does not ask a second time', async () => {
    const { port, left } = setUp([0, 5]);
    await expect(port.read(buffer, 0, 16)).rejects.toThrow('hung up');
    expect(left).toEqual([5]);
  });

  it('fails where the line hangs up while it waits', async () => {
    const { port, waiting } = setUp([again()]);
    const reading = port.read(buffer, 0, 16);
    await expect.poll(() => waiting.length).toBe(1);
    waiting[0]?.(new Error('bad file descriptor'));
    await expect(reading).rejects.toThrow('bad file descriptor');
  });

  it('fails as any other error says', async () => {
    const { port } = setUp([Object.assign(new Error('gone'), { code: 'EIO' })]);
    await expect(port.read(buffer, 0, 16)).rejects.toThrow('gone');
  });

  it('is called off where the port was closed', async () => {
    const { port } = setUp([5]);
    port.fd = null;
    await expect(port.read(buffer, 0, 16)).rejects.toMatchObject({ canceled: true });
  });

  it('is left alone on a port of another kind', () => {
    const other = { read: () => 1 };
    endReadsAtHangUp(other);
    endReadsAtHangUp(undefined);
    expect(other.read()).toBe(1);
  });
});

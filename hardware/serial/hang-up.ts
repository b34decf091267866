import { read } from 'node:fs';
import { promisify } from 'node:util';

/** What is needed of an open port of the serial library on Linux. */
export interface PolledPort {
  /** `null` once closed. */
  readonly fd: number | null;
  readonly poller: { once(event: 'readable', tell: (error: Error | null) => void): unknown };
  read(buffer: Buffer, offset: number, length: number): Promise<{ buffer: Buffer; bytesRead: number }>;
}

/** Reads from a descriptor; handed in by tests only. */
export type ReadFrom = (
  fd: number,
  buffer: Buffer,
  offset: number,
  length: number,
  position: null,
) => Promise<{ bytesRead: number }>;

const NOTHING_YET: readonly unknown[] = ['EAGAIN', 'EWOULDBLOCK', 'EINTR'];

/**
 * Makes a read of an open port fail when the line has hung up.
 *
 * A terminal that hung up gives no bytes at once, for ever, while a quiet one refuses the read. The library (bindings
 * 13) takes the first for the second and asks again without end: a cable pulled at the moment of a read is then never
 * told, and keeps one core busy. Does nothing to a port that is not of this kind.
 */
export function endReadsAtHangUp(port: object | undefined, readFrom: ReadFrom = promisify(read)): void {
  if (!isPolled(port)) return;
  port.read = async (buffer, offset, length) => {
    for (;;) {
      if (port.fd === null) throw Object.assign(new Error('the port is closed'), { canceled: true });
      try {
        const { bytesRead } = await readFrom(port.fd, buffer, offset, length, null);
        if (bytesRead > 0) return { buffer, bytesRead };
        throw new Error('the line hung up');
      } catch (error) {
        if (!NOTHING_YET.includes((error as NodeJS.ErrnoException).code)) throw error;
      }
      await readable(port);
    }
  };
}

/** Rejects when the line hangs up meanwhile, or the port is closed. */
function readable(port: PolledPort): Promise<void> {
  // Closed between read and wait: the poller is gone, and nobody would ever be told.
  if (port.fd === null) return Promise.resolve();
  return new Promise((resolve, reject) => {
    port.poller.once('readable', (error) => (error === null ? resolve() : reject(error)));
  });
}

function isPolled(port: object | undefined): port is PolledPort {
  return port !== undefined && 'fd' in port && 'poller' in port && 'read' in port;
}

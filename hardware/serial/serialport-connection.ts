import { SerialPort } from 'serialport';
import type { Connection } from './connection.ts';
import { endReadsAtHangUp } from './hang-up.ts';
import { OpenFailure, type OpenFailureCode } from './open-failure.ts';

/** Bytes that may wait for a line that takes none; what is written beyond is dropped. */
const MAX_UNSENT = 4096;

/**
 * Opens a real serial port, or one end of a pseudo-terminal.
 *
 * Each call makes a new port object: one that failed while writing opens again but stays deaf. Rejects with `OpenFailure`.
 */
export async function openSerialPort(path: string, baud: number): Promise<Connection> {
  // Hanging up on close would drop DTR, which resets many adapters and boards at the next open.
  const port = new SerialPort({ path, baudRate: baud, autoOpen: false, hupcl: false });
  // Before the first read, which the library begins when it tells that the port is open.
  port.prependOnceListener('open', () => endReadsAtHangUp(port.port));
  const connection = connectionOf(port);
  await new Promise<void>((resolve, reject) => {
    port.open((error) => (error === null ? resolve() : reject(new OpenFailure(codeOf(error), path, error))));
  });
  return connection;
}

function connectionOf(port: SerialPort): Connection {
  let ended: string | null = null;
  let tellData: (chunk: Uint8Array) => void = () => {};
  let tellClose: (reason: string) => void = () => {};
  let released: () => void = () => {};
  const freed = new Promise<void>((resolve) => {
    released = () => resolve();
  });

  // One failure arrives as several events (error, close, a failed write): only the first one counts.
  function end(reason: string): void {
    if (ended !== null) return;
    ended = reason;
    tellClose(reason);
    // A port that is closing already, or that went away, reports its own end by the close event.
    if (port.isOpen) port.close(released);
  }
  // These two stay for the life of the port object: an error without a listener would end the process.
  port.on('error', (error: Error) => end(error.message));
  port.on('close', (error: Error | null) => {
    end(error?.message ?? 'closed');
    released();
  });
  port.on('data', (chunk: Uint8Array) => {
    if (ended === null) tellData(chunk);
  });

  return {
    write(bytes) {
      // The library keeps what is written to a closed port for the next open, and has no bound for a stuck one.
      if (ended === null && port.isOpen && port.writableLength < MAX_UNSENT) port.write(bytes);
    },
    close() {
      end('closed');
      return freed;
    },
    onData(listener) {
      tellData = listener;
    },
    onClose(listener) {
      tellClose = listener;
      if (ended !== null) listener(ended);
    },
  };
}

/** The library's open errors carry no code, only these words (serialport 13 on Linux). */
const OPEN_MESSAGES: readonly (readonly [RegExp, OpenFailureCode])[] = [
  [/no such file or directory|no such device/i, 'not-found'],
  [/permission denied|operation not permitted/i, 'no-permission'],
  [/cannot lock port|resource busy/i, 'in-use'],
  [/inappropriate ioctl|is a directory|not a tty/i, 'not-serial'],
];

function codeOf(error: Error): OpenFailureCode {
  return OPEN_MESSAGES.find(([words]) => words.test(error.message))?.[1] ?? 'other';
}

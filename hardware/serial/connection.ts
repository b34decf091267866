/**
 * One open line to a device, good for one use: once it has ended, open another.
 *
 * It ends once, by `close` or by itself, and says so once to the `onClose` listener. Nothing is queued:
 * what is written to an ended connection is dropped.
 */
export interface Connection {
  write(bytes: Uint8Array): void;
  /** Ends the connection; resolves when the port is free again. May be called any number of times. */
  close(): Promise<void>;
  /** Sets the one listener for what arrives, in chunks of any size. */
  onData(listener: (chunk: Uint8Array) => void): void;
  /** Sets the one listener for the end; called at once when the end has already come. */
  onClose(listener: (reason: string) => void): void;
}

/** Opens a line at a path, `baud` bits a second, 8 data bits, no parity. Rejects with `OpenFailure`. */
export type OpenPort = (path: string, baud: number) => Promise<Connection>;

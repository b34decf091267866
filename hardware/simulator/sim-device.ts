import type { Connection } from '../serial/connection.ts';
import type { ByteFault } from './faults.ts';

/** What every simulated device can do: be plugged in, and be disturbed. */
export interface SimDevice {
  /** Takes the far end of a cable; a new one replaces the one before. */
  attach(connection: Connection): void;
  /** Bends what is sent from now on; `null` lets all through again. */
  disturb(fault: ByteFault | null): void;
  /** Falls silent for good. */
  stop(): void;
}

/** The plug of a simulated device: where its bytes leave, and where orders for it arrive. */
export class DevicePlug {
  #connection: Connection | null = null;
  #fault: ByteFault | null = null;

  attach(connection: Connection, onData: (chunk: Uint8Array) => void): void {
    this.#connection = connection;
    connection.onData(onData);
    connection.onClose(() => {
      if (this.#connection === connection) this.#connection = null;
    });
  }

  disturb(fault: ByteFault | null): void {
    this.#fault = fault;
  }

  /** Sends, through the fault if there is one; nobody at the other end is no error. */
  send(bytes: Uint8Array): void {
    const through = this.#fault === null ? bytes : this.#fault(bytes);
    if (through.length > 0) this.#connection?.write(through);
  }
}

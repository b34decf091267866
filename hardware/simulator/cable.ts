import type { Connection } from '../serial/connection.ts';

/** A cable between a program and a simulated device, which can be pulled out and plugged in again. */
export interface Cable {
  /** The name to open at the program's end; the same after every plug. */
  readonly path: string;
  /** Joins the two ends; resolves when the near end can be opened. */
  plug(): Promise<void>;
  /** Ends the connections at both ends; the name is then not found. */
  pull(): Promise<void>;
  /** Pulls for good and frees everything. */
  stop(): Promise<void>;
}

/** Takes the device's end of a cable each time it is plugged in. */
export type FarEnd = (connection: Connection) => void;

import { SerialPort } from 'serialport';

/** The ports the serial library finds, by device path. Empty where it cannot look, as in a container without udev. */
export async function listSerialPorts(): Promise<string[]> {
  try {
    return (await SerialPort.list()).map((port) => port.path);
  } catch {
    return [];
  }
}

import { DevicePlug, type SimDevice } from './sim-device.ts';

/** An ear-tag wand and what is held before it. */
export interface SimWand extends SimDevice {
  /** Reads the tag with this 15-digit number. */
  presentTag(tag: string): void;
  /** Sends any line, such as that of an industrial transponder. */
  sendLine(line: string): void;
}

/** Makes a wand that sends lines of the short line mode (`LA 982 000001088420`). */
export function createSimWand(): SimWand {
  const plug = new DevicePlug();
  let stopped = false;
  function sendLine(line: string): void {
    if (!stopped) plug.send(Buffer.from(`${line}\r\n`, 'latin1'));
  }
  return {
    attach: (connection) => plug.attach(connection, () => {}),
    disturb: (fault) => plug.disturb(fault),
    presentTag: (tag) => sendLine(`LA ${tag.slice(0, 3)} ${tag.slice(3)}`),
    sendLine,
    stop() {
      stopped = true;
    },
  };
}

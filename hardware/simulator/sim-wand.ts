import { decodeTelegram, encodeTelegram, type TagCode } from '../../core/herd/telegram.ts';
import { encodeWandLine, type WandForm } from './encode-wand.ts';
import { DevicePlug, type SimDevice } from './sim-device.ts';

/** An ear-tag wand and what is held before it. */
export interface SimWand extends SimDevice {
  /**
   * Reads a tag with this 15-digit number through its telegram. `marks` says what else the transponder holds.
   *
   * Throws `RangeError` for a number no transponder can hold.
   */
  presentTag(tag: string, marks?: Partial<Omit<TagCode, 'tag'>>): void;
  /** Hears these 128 bits, as 32 digits of base 16; what does not check is told as an invalid read. */
  presentTelegram(hex: string): void;
  /** Sends any line, such as that of an industrial transponder. */
  sendLine(line: string): void;
}

const PLAIN = { animal: true, reserved: 0, extraBlock: false, extra: 0 } as const;

/** Makes a wand that sends lines of this form (`LA 982 000001088420` unless told otherwise). */
export function createSimWand(form: WandForm = 'short'): SimWand {
  const plug = new DevicePlug();
  let stopped = false;
  function sendLine(line: string): void {
    if (!stopped) plug.send(Buffer.from(`${line}\r\n`, 'latin1'));
  }
  function presentTelegram(hex: string): void {
    const read = decodeTelegram(hex);
    sendLine(read.ok ? encodeWandLine(read.code, form) : 'LI');
  }
  return {
    attach: (connection) => plug.attach(connection, () => {}),
    disturb: (fault) => plug.disturb(fault),
    presentTag: (tag, marks = {}) => presentTelegram(encodeTelegram({ ...PLAIN, ...marks, tag })),
    presentTelegram,
    sendLine,
    stop() {
      stopped = true;
    },
  };
}

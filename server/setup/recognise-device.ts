import { RECOGNISED_BAUDS, recogniseScale } from '../../hardware/scale/listen.ts';
import { plainBytes } from '../../hardware/scale/plain-lines.ts';
import type { OpenPort } from '../../hardware/serial/connection.ts';
import type { Timers } from '../../hardware/serial/timers.ts';
import { recogniseWand, WAND_BAUDS } from '../../hardware/wand/recognise-wand.ts';
import type { DeviceRole } from '../../shared/tray.ts';
import { type Choice, choiceFrom, wandChoices } from './choice.ts';

/** What listening at a port came to. */
export interface Recognised {
  readonly choices: readonly Choice[];
  /** The speed at which a scale sends plain lines by itself, so that an expression may be made for them. */
  readonly linesBaud: number | null;
}

/** How far listening has come. */
export interface ListeningStep {
  readonly baud: number;
  readonly asking: boolean;
  readonly done: number;
  readonly most: number;
}

/** What listening at a port needs. */
export interface RecogniseDeviceOptions {
  readonly role: DeviceRole;
  readonly path: string;
  readonly openPort: OpenPort;
  readonly timers: Timers;
  readonly signal: AbortSignal;
  readonly onStep: (step: ListeningStep) => void;
}

/** Where listening for a device begins. */
export function firstStep(role: DeviceRole): ListeningStep {
  const bauds = role === 'wand' ? WAND_BAUDS : RECOGNISED_BAUDS;
  return { baud: bauds[0] ?? 9600, asking: false, done: 0, most: 2 * bauds.length };
}

/** Finds out what is plugged in at a port that is free. Rejects with `OpenFailure`. */
export async function recogniseDevice(options: RecogniseDeviceOptions): Promise<Recognised> {
  const { role, path, openPort, timers, signal } = options;
  const { most } = firstStep(role);
  let done = -1;
  const onStep = (baud: number, asking = false): void => {
    done += 1;
    if (!signal.aborted) options.onStep({ baud, asking, done, most });
  };
  const shared = { path, openPort, timers, signal, onStep };
  if (role === 'wand') {
    return { choices: wandChoices(await recogniseWand(shared)), linesBaud: null };
  }
  const plain = { baud: 0, bytes: 0 };
  const found = await recogniseScale({
    ...shared,
    onHeard(baud, heard) {
      const bytes = plainBytes(heard);
      if (bytes > plain.bytes) Object.assign(plain, { baud, bytes });
    },
  });
  return {
    choices: found.map((each) => choiceFrom(each, role)),
    linesBaud: plain.bytes > 0 ? plain.baud : null,
  };
}

import type { Earcon } from '../../core/speech/earcon.ts';
import type { ScaleRole } from '../../core/weighing/reading.ts';
import type { LinkStatus } from '../../shared/shed.ts';
import type { DeviceRole, TrayAction } from '../../shared/tray.ts';
import type { KioskConfig } from '../config/kiosk-config.ts';
import type { SetAtScreen } from '../config/with-settings.ts';
import type { ZeroAnswer } from '../devices/devices.ts';
import type { MedicinesFile } from '../formulary/own-medicines.ts';
import type { HerdFile } from '../herd/herd-file.ts';
import type { Photos } from '../herd/photos.ts';
import type { Network } from '../network/network.ts';
import type { WeatherImport } from '../season/weather-import.ts';
import type { DeviceSetup, SetupClosed } from '../setup/device-setup.ts';
import type { Store } from '../store/store.ts';
import type { Farm } from '../sync/farm.ts';
import type { Clock } from './clock.ts';
import type { Disk } from './disk.ts';
import type { Memory } from './memory.ts';

/** What the workings of the barn share: its memory, its disk, its clock. */
export interface BarnContext {
  memory: Memory;
  readonly store: Store;
  readonly clock: Clock;
  /** Whether records can be kept. */
  readonly disk: Disk;
  /** Replaced when a device is set up, or a part of it set, at the screen. */
  config: KioskConfig;
  /** Makes an id nobody has used: a UUIDv7, so that ids sort by time. */
  readonly newId: () => string;
  readonly linkOf: (role: DeviceRole) => LinkStatus;
  /** Asks a scale for zero, once and only while its link is ready. */
  readonly zero: (role: ScaleRole) => ZeroAnswer;
  /** Where the farm's own medicines are kept. */
  readonly medicines: MedicinesFile;
  /** Photos of the animals. */
  readonly photos: Photos;
  /** The herd file that is being read in. */
  readonly herdFile: HerdFile;
  /** The weather file that is being read in. */
  readonly weatherImport: WeatherImport;
  /** The setting up of devices, or why it is not to be had. */
  readonly setup: DeviceSetup | SetupClosed;
  /** Keeps a part of the configuration; `null` in the demo. Throws when the disk refuses. */
  readonly settle: ((settings: Partial<SetAtScreen>) => void) | null;
  /** Who is let in besides the board. */
  readonly network: Pick<Network, 'turn' | 'pair' | 'stopPairing' | 'revoke' | 'forgetPin'>;
  /** Copies the records to every place there is; answers whether that began. */
  readonly backUpNow: () => boolean;
  /** The sharing of the herd with other kiosks. */
  farm: Farm;
  /** Says a dose, or sounds an earcon, so that the voice can be judged. */
  readonly tryVoice: (earcon: Earcon | null) => void;
  /** Takes the sound that was recorded off the disk. Throws when the disk refuses. */
  readonly wipeRecordings: () => void;
  /** Moves the simulated scales and wand; `null` outside the demo. */
  readonly tray: ((action: TrayAction, memory: Memory) => boolean) | null;
  /** Ends the demo and starts on real devices; `null` outside the demo. Throws when the disk refuses. */
  readonly leaveDemo: (() => void) | null;
  /** Starts anew as a practice round; `null` in one. */
  readonly beginPractice: (() => void) | null;
  /** Ends the practice round; `null` outside of one. */
  readonly endPractice: (() => void) | null;
}

/** What is kept of a farm and the clock it is read by: all that pages and files of the records are made from. */
export type FarmRecords = Pick<BarnContext, 'memory' | 'store'> & {
  readonly clock: Pick<Clock, 'now' | 'isTrusted'>;
  readonly config: Pick<KioskConfig, 'timeZone'>;
};

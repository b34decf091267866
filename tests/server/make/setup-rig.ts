import { grams, kilograms, massFrom } from '../../../core/quantity/mass.ts';
import type { Connection, OpenPort } from '../../../hardware/serial/connection.ts';
import { OpenFailure } from '../../../hardware/serial/open-failure.ts';
import { createMemoryCable, type MemoryCable } from '../../../hardware/simulator/memory-cable.ts';
import { createSimScale } from '../../../hardware/simulator/sim-scale.ts';
import type { SimFormat } from '../../../hardware/simulator/sim-voice.ts';
import { createSimWand } from '../../../hardware/simulator/sim-wand.ts';
import type { DevicesConfig } from '../../../server/config/kiosk-config.ts';
import { createDevices, type Devices } from '../../../server/devices/devices.ts';
import { createDeviceSetup, type DeviceSetup } from '../../../server/setup/device-setup.ts';
import type { SetupView } from '../../../shared/setup.ts';
import { ManualTimers } from '../../hardware/manual-timers.ts';

/** A scale at the far end of a cable in memory, whose load is a number to set. */
export interface LoadedScale {
  readonly cable: MemoryCable;
  load: number;
}

/** A board with cables in memory, its devices and the setting up of them. */
export interface SetupRig {
  readonly timers: ManualTimers;
  readonly devices: Devices;
  readonly setup: DeviceSetup;
  /** The configuration as it was last written. */
  config(): DevicesConfig;
  /** What the devices told, in short words. */
  readonly told: string[];
  /** Lets the next write to the disk fail. */
  readonly disk: { full: boolean };
  view<S extends SetupView['step']>(step: S): Extract<SetupView, { step: S }>;
  stop(): Promise<void>;
}

/** What is plugged in, by path. */
export interface Bench {
  readonly timers: ManualTimers;
  scale(path: string, format: SimFormat, unit?: 'kg' | 'g' | 'lb'): Promise<LoadedScale>;
  /** A device that sends lines made of its load and whether it moves, ten times a second. */
  talker(path: string, line: (grams: number, moves: boolean) => string): Promise<LoadedScale>;
  wand(path: string, baud?: number): Promise<ReturnType<typeof createSimWand>>;
  rig(config?: DevicesConfig): SetupRig;
}

/** Starts with nothing plugged in. */
export function createBench(): Bench {
  const timers = new ManualTimers();
  const cables = new Map<string, MemoryCable>();

  return {
    timers,
    async scale(path, format, unit = 'kg') {
      const scale: { load: number } = { load: 0 };
      const device = createSimScale({
        timers,
        face: { unit, division: unit === 'lb' ? massFrom(0.1, 'lb') : unit === 'g' ? grams(1) : grams(50) },
        capacity: kilograms(300),
        format,
        load: () => grams(scale.load),
        changing: () => false,
      });
      const cable = createMemoryCable(path, timers, device.attach);
      await cable.plug();
      cables.set(path, cable);
      return Object.assign(scale, { cable });
    },
    async talker(path, line) {
      const scale: { load: number } = { load: 0 };
      let shown = 0;
      let far: Connection | null = null;
      const cable = createMemoryCable(path, timers, (connection) => {
        far = connection;
      });
      const speak = (): void => {
        far?.write(Buffer.from(`${line(scale.load, scale.load !== shown)}\r\n`, 'latin1'));
        shown = scale.load;
        timers.set(speak, 100);
      };
      speak();
      await cable.plug();
      cables.set(path, cable);
      return Object.assign(scale, { cable });
    },
    async wand(path, baud) {
      const wand = createSimWand();
      const cable = createMemoryCable(path, timers, wand.attach);
      await cable.plug();
      cables.set(path, baud === undefined ? cable : { ...cable, openPort: garbledBut(baud, cable) });
      return wand;
    },
    rig(initial = {}) {
      let config = initial;
      const told: string[] = [];
      const disk = { full: false };
      const shared = {
        openPort: (path: string, baud: number) => {
          const cable = cables.get(path);
          return cable === undefined
            ? Promise.reject(new OpenFailure('not-found', path))
            : cable.openPort(path, baud);
        },
        timers,
        random: () => 0.5,
      };
      const devices = createDevices({
        ...shared,
        config,
        listener: {
          reading: ({ role, mass }) => told.push(`${role} ${mass.value}`),
          wandRead: (read) => told.push(`wand ${read.kind}`),
          link: (role, ready) => told.push(`${role} ${ready ? 'ready' : 'blank'}`),
        },
      });
      const setup = createDeviceSetup({
        ...shared,
        devices: () => devices,
        config: () => config,
        write: (role, device) => {
          if (disk.full) throw new Error('no room on the disk');
          config = { ...config, [role]: device };
        },
        listPorts: async () =>
          [...cables.keys()].map((path) => ({ path, device: path, byId: path, byPath: null })),
        changed: () => {},
        log: (message, error) => told.push(`${message}: ${String(error)}`),
      });
      return {
        timers,
        devices,
        setup,
        config: () => config,
        told,
        disk,
        view(step) {
          const view = setup.view();
          if (view.step !== step) throw new Error(`the set-up stands at ${JSON.stringify(view)}`);
          return view as Extract<SetupView, { step: typeof step }>;
        },
        async stop() {
          await setup.stop();
          await devices.stop();
        },
      };
    },
  };
}

/** A line read at another speed than it is sent at: none of its bytes come as they are. */
function garbledBut(right: number, cable: MemoryCable): OpenPort {
  return async (path, baud) => {
    const connection = await cable.openPort(path, baud);
    if (baud === right) return connection;
    return {
      ...connection,
      onData: (listen) => connection.onData((chunk) => listen(chunk.map((byte) => byte ^ 0xd5))),
    };
  };
}

import { oneAtATime } from '../../core/in-turn.ts';
import type { Reading, ScaleRole } from '../../core/weighing/reading.ts';
import { scaleProfile } from '../../hardware/scale/profiles.ts';
import { scaleDriver } from '../../hardware/scale/scale-driver.ts';
import type { OpenPort } from '../../hardware/serial/connection.ts';
import { createLink, type Link } from '../../hardware/serial/link.ts';
import type { LinkState } from '../../hardware/serial/link-state.ts';
import type { Timers } from '../../hardware/serial/timers.ts';
import { type WandRead, wandDriver } from '../../hardware/wand/wand-driver.ts';
import type { DeviceView, LinkStatus } from '../../shared/shed.ts';
import { DeviceRole } from '../../shared/tray.ts';
import type { DevicesConfig, ScaleConfig, WandConfig } from '../config/kiosk-config.ts';
import { realDevice } from './real-device.ts';
import { SHARED_TROUBLE, troubleOf } from './trouble.ts';

/** What the devices tell, and whom. */
export interface DeviceListener {
  /** A reading, only ever from a ready link. */
  reading(reading: Reading): void;
  wandRead(read: WandRead): void;
  /** A link changed; `ready` false means that nothing it said before counts any more. */
  link(role: DeviceRole, ready: boolean): void;
}

/** What came of asking a scale for zero. */
export type ZeroAnswer = 'sent' | 'no-command' | 'not-ready';

/** The three devices with a cable, as the server holds them. */
export interface Devices {
  linkOf(role: DeviceRole): LinkStatus;
  views(): DeviceView[];
  /** The role whose device a path stands for, or `null`. */
  holderOf(path: string): DeviceRole | null;
  /** Frees the port of a role until it is replaced; resolves when it is free. What the device said counts no more. */
  lend(role: DeviceRole): Promise<void>;
  /**
   * Ends the link of a role and, once its port is free, starts the one given, or none.
   *
   * Answers false, and leaves all as it was, where another role has the device.
   */
  replace<R extends DeviceRole>(role: R, device: DevicesConfig[R]): Promise<boolean>;
  /** Sends a scale the zero of its format, once and only while its link is ready. */
  zero(role: ScaleRole): ZeroAnswer;
  stop(): Promise<void>;
}

/** What the devices need. */
export interface DevicesOptions {
  readonly config: DevicesConfig;
  readonly openPort: OpenPort;
  readonly timers: Timers;
  readonly random: () => number;
  readonly listener: DeviceListener;
}

const NO_COUNTERS = { opens: 0, losses: 0, frames: 0, badFrames: 0, discardedBytes: 0 };

/** Opens a link to every configured device and keeps it open until stopped; a role left out stays absent. */
export function createDevices(options: DevicesOptions): Devices {
  const { listener, timers, openPort, random } = options;
  const configs: DevicesConfig = { ...options.config };
  const links = new Map<DeviceRole, Link>();
  const shared = { openPort, timers, random };
  let stopped = false;
  /** One change of links at a time. */
  const inTurn = oneAtATime();

  function onState(role: DeviceRole) {
    return (state: LinkState) => listener.link(role, state.status === 'ready');
  }

  function startScale(role: ScaleRole, device: ScaleConfig): void {
    const profile = profileOf(device);
    if (profile === undefined) return;
    const driver = scaleDriver(profile, role, () => timers.now());
    const { path, baud } = device;
    links.set(
      role,
      createLink({ ...shared, path, baud, driver, onState: onState(role), onItem: listener.reading }),
    );
  }

  function startWand({ path, baud }: WandConfig): void {
    const driver = wandDriver(() => timers.now());
    links.set(
      'wand',
      createLink({ ...shared, path, baud, driver, onState: onState('wand'), onItem: listener.wandRead }),
    );
  }

  function start(role: DeviceRole): void {
    if (configs.wand !== undefined && role === 'wand') startWand(configs.wand);
    else if (role !== 'wand' && configs[role] !== undefined) startScale(role, configs[role]);
  }

  function otherOn(path: string, role: DeviceRole | null): DeviceRole | null {
    const device = realDevice(path);
    const on = DeviceRole.options.find((other) => {
      const config = configs[other];
      return other !== role && config !== undefined && realDevice(config.path) === device;
    });
    return on ?? null;
  }

  function sharingTrouble(role: DeviceRole): string | null {
    const path = configs[role]?.path;
    return path !== undefined && otherOn(path, role) !== null ? SHARED_TROUBLE : null;
  }

  async function end(role: DeviceRole): Promise<void> {
    const link = links.get(role);
    links.delete(role);
    // A stopped link tells nobody; whoever held its last reading must drop it before the port is let go.
    listener.link(role, false);
    await link?.stop();
  }

  // Names can differ and still lead to one device: the first role has it.
  for (const [at, role] of DeviceRole.options.entries()) {
    const path = configs[role]?.path;
    const other = path === undefined ? null : otherOn(path, role);
    if (other === null || DeviceRole.options.indexOf(other) > at) start(role);
  }

  return {
    linkOf: (role) => links.get(role)?.state.status ?? 'absent',
    views: () =>
      DeviceRole.options.map((role) => {
        const device = configs[role];
        const link = links.get(role);
        return {
          role,
          link: link?.state.status ?? 'absent',
          path: device?.path ?? null,
          profile: device?.profile ?? null,
          baud: device?.baud ?? null,
          ...scaleFacts(role === 'wand' ? undefined : configs[role]),
          zeroable: role !== 'wand' && profileOf(configs[role])?.commands.zero !== undefined,
          trouble: link === undefined ? sharingTrouble(role) : troubleOf(link.state),
          counters: { ...(link?.counters ?? NO_COUNTERS) },
        };
      }),
    holderOf: (path) => otherOn(path, null),
    lend: (role) => inTurn(() => end(role)),
    replace: (role, device) =>
      inTurn(async () => {
        if (stopped || (device !== undefined && otherOn(device.path, role) !== null)) return false;
        await end(role);
        configs[role] = device;
        if (!stopped) start(role);
        return true;
      }),
    zero(role) {
      const command = profileOf(configs[role])?.commands.zero;
      if (command === undefined) return 'no-command';
      return links.get(role)?.send(command) === true ? 'sent' : 'not-ready';
    },
    stop: async () => {
      stopped = true;
      await inTurn(() => Promise.all([...links.values()].map((link) => link.stop())));
    },
  };
}

function scaleFacts(device: ScaleConfig | undefined): Pick<DeviceView, 'capacityGrams' | 'divisionGrams'> {
  return {
    capacityGrams: device?.capacityGrams ?? null,
    divisionGrams: device?.divisionGrams ?? null,
  };
}

function profileOf(device: ScaleConfig | undefined) {
  return device === undefined ? undefined : scaleProfile(device.profile, device.settings);
}

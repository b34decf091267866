import { unreachable } from '../../core/unreachable.ts';
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

/** What the devices tell, and whom. */
export interface DeviceListener {
  /** A reading, only ever from a ready link. */
  reading(reading: Reading): void;
  wandRead(read: WandRead): void;
  /** A link changed; `ready` false means that nothing it said before counts any more. */
  link(role: DeviceRole, ready: boolean): void;
}

/** The three devices with a cable, as the server holds them. */
export interface Devices {
  linkOf(role: DeviceRole): LinkStatus;
  views(): DeviceView[];
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
  const { config, listener, timers, openPort, random } = options;
  const links = new Map<DeviceRole, Link>();
  const shared = { openPort, timers, random };

  function onState(role: DeviceRole) {
    return (state: LinkState) => listener.link(role, state.status === 'ready');
  }

  function startScale(role: ScaleRole, device: ScaleConfig | undefined): void {
    const profile = device === undefined ? undefined : scaleProfile(device.profile);
    if (device === undefined || profile === undefined) return;
    const driver = scaleDriver(profile, role, timers.now);
    links.set(
      role,
      createLink({ ...shared, ...device, driver, onState: onState(role), onItem: listener.reading }),
    );
  }

  function startWand(device: WandConfig | undefined): void {
    if (device === undefined) return;
    const driver = wandDriver(timers.now);
    links.set(
      'wand',
      createLink({ ...shared, ...device, driver, onState: onState('wand'), onItem: listener.wandRead }),
    );
  }

  startScale('platform', config.platform);
  startScale('bench', config.bench);
  startWand(config.wand);

  return {
    linkOf: (role) => links.get(role)?.state.status ?? 'absent',
    views: () =>
      DeviceRole.options.map((role) => {
        const device = config[role];
        const link = links.get(role);
        return {
          role,
          link: link?.state.status ?? 'absent',
          path: device?.path ?? null,
          profile: device?.profile ?? null,
          baud: device?.baud ?? null,
          trouble: link === undefined ? null : troubleOf(link.state),
          counters: { ...(link?.counters ?? NO_COUNTERS) },
        };
      }),
    stop: async () => {
      await Promise.all([...links.values()].map((link) => link.stop()));
    },
  };
}

function troubleOf(state: LinkState): string | null {
  switch (state.status) {
    case 'absent':
    case 'opening':
    case 'ready':
      return null;
    case 'settling':
      return state.stage === 'probe' && state.attempt > 1
        ? 'It is plugged in but sends nothing this format can read. Check that it is switched on, and its format and speed.'
        : null;
    case 'silent':
      return 'It is plugged in but has stopped sending. Check that it is switched on.';
    case 'lost':
      return state.remedy;
    default:
      return unreachable(state);
  }
}

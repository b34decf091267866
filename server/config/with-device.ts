import type { DeviceRole } from '../../shared/tray.ts';
import { type DevicesConfig, KioskConfig } from './kiosk-config.ts';
import { changeConfig } from './save.ts';

/**
 * Puts a device into the configuration file, or takes it out where there is none, and gives the configuration with it.
 *
 * All else in the file stays as it was. Throws, with the file as it was, when the file or the change makes no sense, or
 * the disk refuses.
 */
export function withDevice<R extends DeviceRole>(
  dataFolder: string,
  config: KioskConfig,
  role: R,
  device: DevicesConfig[R],
): KioskConfig {
  changeConfig(dataFolder, (before) => {
    const { [role]: _, ...others } = (before['devices'] ?? {}) as Record<string, unknown>;
    const changed = { ...before, devices: device === undefined ? others : { ...others, [role]: device } };
    // What could not be read again would leave the next start without any device.
    KioskConfig.parse(changed);
    return changed;
  });
  const { [role]: _, ...others } = config.devices;
  return { ...config, devices: device === undefined ? others : { ...others, [role]: device } };
}

import { KioskConfig } from './kiosk-config.ts';
import { changeConfig } from './save.ts';

/** What of the configuration is set at the screen, besides devices. */
export type SetAtScreen = Pick<KioskConfig, 'panel' | 'timeZone' | 'people'>;

/**
 * Puts settings into the configuration file and gives the configuration with them.
 *
 * All else in the file stays as it was. Throws, with the file as it was, when the file or the change makes no sense, or
 * the disk refuses.
 */
export function withSettings(
  dataFolder: string,
  config: KioskConfig,
  settings: Partial<SetAtScreen>,
): KioskConfig {
  changeConfig(dataFolder, (before) => {
    const changed = { ...before, ...settings };
    // What could not be read again would leave the next start without anything.
    KioskConfig.parse(changed);
    return changed;
  });
  return { ...config, ...settings };
}

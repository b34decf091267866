import type { SimulatedBarn } from '../../hardware/simulator/barn.ts';
import { WAND_BAUD, WAND_PROFILE } from '../../hardware/wand/wand-driver.ts';
import type { DevicesConfig } from '../config/kiosk-config.ts';

/** The simulated devices as a configuration would name them. */
export function devicesOf({ paths, profiles }: SimulatedBarn): DevicesConfig {
  const scale = (role: 'platform' | 'bench') => ({ path: paths[role], profile: profiles[role], baud: 9600 });
  return {
    platform: { ...scale('platform'), divisionGrams: 50 },
    // Its step is left to its decimals: the tray can put a finer scale there.
    bench: scale('bench'),
    wand: { path: paths.wand, profile: WAND_PROFILE, baud: WAND_BAUD },
  };
}

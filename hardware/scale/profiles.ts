import type { ScaleProfile } from './profile.ts';
import { SMA } from './sma.ts';
import { ST_GS } from './st-gs.ts';

const PROFILES: readonly ScaleProfile[] = [SMA, ST_GS];

/** The ids a configuration may name. */
export const SCALE_PROFILE_IDS: readonly string[] = PROFILES.map((profile) => profile.id);

/** The profile of this id, or `undefined` where none is known. */
export function scaleProfile(id: string): ScaleProfile | undefined {
  return PROFILES.find((profile) => profile.id === id);
}

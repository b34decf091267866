import type { BarnContext } from '../barn/barn-context.ts';
import { keep } from '../barn/shed-intents.ts';
import { KioskConfig } from '../config/kiosk-config.ts';
import type { Setup } from '../config/load.ts';
import type { Settings } from '../store/settings.ts';

/** How a kiosk looks and who is at it: all that a practice round takes over from the kiosk it is held at. */
export type PracticeLook = Pick<KioskConfig, 'panel' | 'timeZone' | 'people'> &
  Pick<Settings, 'face' | 'language' | 'weightUnit'>;

/** How the server starts anew: on the real devices, into a practice round, or as it was before one. */
export type NextStart =
  | { readonly kind: 'real' }
  | { readonly kind: 'practice'; readonly look: PracticeLook }
  | { readonly kind: 'before' };

/** The look of a kiosk, for a practice round held at it. */
export function lookOf({ config, memory }: Pick<BarnContext, 'config' | 'memory'>): PracticeLook {
  const { panel, timeZone, people } = config;
  const { face, language, weightUnit } = memory.settings;
  return { panel, timeZone, people, face, language, weightUnit };
}

/** The set-up of a practice round: the demo's, with the look of the kiosk. */
export function practiceSetup(look: PracticeLook): Setup {
  return { kind: 'demo', config: { ...KioskConfig.parse({}), ...look } };
}

/** Furnishes the store of a practice round: the safety words were read, and weights are in the unit of the kiosk. */
export function furnishPractice(barn: BarnContext, { weightUnit }: PracticeLook): void {
  keep(barn, 'weightUnit', weightUnit);
  keep(barn, 'safetyRead', true);
}

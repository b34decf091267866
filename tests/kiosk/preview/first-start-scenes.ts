import { FIRST_STEPS } from '../../../core/first-start/first-start.ts';
import type { Scene } from './scene.ts';
import { settingUp } from './setup-scenes.ts';

/** Every step of the first start of a kiosk. */
export const FIRST_START_SCENES: readonly Scene[] = FIRST_STEPS.map((step) => ({
  name: `first-${step}`,
  place: 'home',
  state: { ...settingUp({ step: 'idle' }), firstStart: step, animals: [], board: [], jugs: [], dayBook: [] },
}));

import { FIRST_STEPS, type FirstStep } from '../../../core/first-start/first-start.ts';
import type { KioskState } from '../../../shared/state.ts';
import type { Scene } from './scene.ts';
import { settingUp } from './setup-scenes.ts';

/** Every step of the first start of a kiosk, and what opens within those that it alone is about. */
export const FIRST_START_SCENES: readonly Scene[] = [
  ...FIRST_STEPS.map((step) => ({ name: `first-${step}`, place: 'home', state: first(step) })),
  {
    name: 'first-panel-small',
    place: 'home',
    state: { ...first('panel'), panel: { widthPx: 800, heightPx: 480, pxPerMm: 7.35 } },
  },
  { name: 'first-clock-untrusted', place: 'home', state: { ...first('clock'), clockTrusted: false } },
  { name: 'first-clock-wrong', place: 'home', state: first('clock'), taps: ['clock-says-wrong'] },
  { name: 'first-regions', place: 'home', state: first('clock'), taps: ['other-zone'] },
  { name: 'first-stretches', place: 'home', state: first('clock'), taps: ['other-zone', 'region-America'] },
  {
    name: 'first-cities',
    place: 'home',
    state: first('clock'),
    taps: ['other-zone', 'region-America', 'stretch-4'],
  },
  { name: 'first-people-new', place: 'home', state: first('people'), taps: ['person-new'] },
];

function first(step: FirstStep): KioskState {
  return { ...settingUp({ step: 'idle' }), firstStart: step, animals: [], board: [], jugs: [], dayBook: [] };
}

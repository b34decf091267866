import { type MountedApp, mountApp } from './mount-app.ts';
import type { Scene } from './preview/scene.ts';
import { soon } from './soon.ts';

/** Mounts a scene, waits for what it fetches, and taps what it taps. */
export async function openScene({ place, state, http = {}, taps = [] }: Scene): Promise<MountedApp> {
  const app = mountApp(state, place, http);
  if (/^(animals|worm-check|shed\/stock)/.test(place)) {
    await soon(() => {
      if (document.querySelector('main [data-testid]') === null) throw new Error('the screen has not come');
      if (document.querySelector('[data-testid$="-loading"]') !== null) throw new Error('no answer yet');
    });
  }
  for (const tap of taps) if (!tap.startsWith('hold:')) app.click(tap);
  return app;
}

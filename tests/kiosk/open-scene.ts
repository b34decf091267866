import { Catalogue } from '../../kiosk/words/catalogue.svelte.ts';
import { type MountedApp, mountApp } from './mount-app.ts';
import type { Scene } from './preview/scene.ts';
import { soon } from './soon.ts';

/** Mounts a scene, waits for what it loads or fetches, and taps what it taps. */
export async function openScene({ place, state, later, http = {}, taps = [] }: Scene): Promise<MountedApp> {
  const catalogue = new Catalogue();
  // A kiosk that cannot read its settings tells no language: the page stays in the one it had.
  if (state.problem !== null) await catalogue.use(state.language);
  const app = mountApp(state, place, http, catalogue);
  const loads = /^(animals|worm-check|shed|day-book)|\/group/.test(place);
  if (state.language !== 'en') await turned();
  if (loads) await shown();
  // The ear is fetched after the screen stands.
  if (state.ear.mode !== 'off' && state.ear.trouble !== 'no-engine') await soon(() => app.get('ear-light'));
  if (later !== undefined) app.patch(later);
  for (const tap of taps) {
    if (tap.startsWith('hold:')) continue;
    // A part that is loaded at need comes after the tap before.
    if (app.find(tap) === null) await soon(() => app.get(tap));
    app.click(tap);
  }
  if (loads) await shown();
  return app;
}

/** Words of another language come in a later turn, and the screen is drawn anew with them. */
function turned(): Promise<void> {
  return soon(() => {
    if (document.querySelector('.kiosk')?.getAttribute('lang') === 'en-GB')
      throw new Error('still in English');
  });
}

async function shown(): Promise<void> {
  // What is asked of the server is answered in a later turn.
  await new Promise((resolve) => setTimeout(resolve));
  await soon(() => {
    if (document.querySelector('main [data-testid]') === null) throw new Error('the screen has not come');
    if (document.querySelector('[data-testid$="-loading"]') !== null) throw new Error('no answer yet');
  });
}

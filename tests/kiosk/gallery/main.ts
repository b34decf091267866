import '@fontsource/barlow-semi-condensed/latin-500.css';
import '@fontsource/barlow-semi-condensed/latin-600.css';
import '@fontsource/barlow-semi-condensed/latin-700.css';
import '../../../kiosk/look/tokens.css';
import '../../../kiosk/look/base.css';
import '../../../kiosk/look/plates.css';
import { mount, unmount } from 'svelte';
import App from '../../../kiosk/App.svelte';
import { Catalogue } from '../../../kiosk/words/catalogue.svelte.ts';
import { barriers } from './barriers.ts';
import { contrastFaults } from './contrast.ts';
import './gallery-page.ts';
import { geometryFaults } from './geometry-faults.ts';
import { Quiet } from './quiet.ts';
import { speakPseudo } from './speak-pseudo.ts';

/** There once the kiosk stands: a screen within its frame or alone, or the way to be let in. */
const STANDS =
  '.kiosk[data-status="live"] :is(.screen > *, main > :not(.screen), .kiosk > section), [data-testid="pair-here"]';

const target = document.getElementById('kiosk');
if (target === null) throw new Error('the page has no place for the kiosk');
const quiet = new Quiet();
let shown: Record<string, unknown> | null = null;

function control(testid: string): HTMLElement | null {
  return document.querySelector<HTMLElement>(`[data-testid="${testid}"]`);
}

window.gallery = {
  async open(place, words) {
    if (shown !== null) await unmount(shown);
    speakPseudo(words === 'pseudo');
    history.replaceState(null, '', `#${place}`);
    const catalogue = new Catalogue();
    await catalogue.use(words === 'en' ? 'en' : 'es');
    await catalogue.whole();
    shown = mount(App, { target, props: { catalogue } });
    await document.fonts.ready;
    // A screen that is fetched comes after its frame.
    await quiet.come(() => document.querySelector(STANDS) !== null);
  },
  async press(tap) {
    const testid = tap.replace('hold:', '');
    await quiet.come(() => control(testid) !== null);
    const pressed = control(testid);
    if (tap === testid) pressed?.click();
    else pressed?.dispatchEvent(new PointerEvent('pointerdown', { pointerId: 1, isPrimary: true }));
    await quiet.come();
  },
  faults: () => [...geometryFaults(), ...contrastFaults()],
  barriers,
};

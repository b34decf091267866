import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Catalogue } from '../../kiosk/words/catalogue.svelte.ts';
import { LANGUAGES } from '../../kiosk/words/languages.ts';
import { rememberedLanguage } from '../../kiosk/words/remembered.ts';
import { type MountedApp, mountApp } from './mount-app.ts';
import { BASE } from './preview/base-state.ts';
import { soon } from './soon.ts';

let app: MountedApp;

beforeEach(() => localStorage.clear());
afterEach(() => app.close());

/** Waits until the screen has turned to a language. */
function turned(testid: string, text: string): Promise<void> {
  return soon(() => expect(app.text(testid)).toContain(text));
}

test('a screen turns to Spanish where it stands, and back', async () => {
  app = mountApp(BASE, 'home');
  expect(app.text('door-platform')).toContain('Weigh and dose');
  app.patch({ language: 'es' });
  await turned('door-platform', 'Pesar y dar dosis');
  app.patch({ language: 'en' });
  await turned('door-platform', 'Weigh and dose');
});

test('a screen fetched at need turns with all its words', async () => {
  app = mountApp(BASE, 'shed/syringes');
  expect(app.text('syringes')).toContain('Which syringes are here?');
  app.patch({ language: 'es' });
  await turned('syringes', '¿Qué jeringas hay aquí?');
});

test('dates and times follow the language', async () => {
  app = mountApp({ ...BASE, language: 'es' }, 'shed');
  await turned('shed', 'Jeringas');
  expect(app.text('shed')).toMatch(/(lun|mar|mié|jue|vie|sáb|dom) \d/);
});

test('who asked for all words has them, also where the language turned meanwhile', async () => {
  app = mountApp(BASE, 'home');
  const catalogue = new Catalogue();
  const spanish = await LANGUAGES.es.whole.get();
  const slow = vi.spyOn(LANGUAGES.es.whole, 'get').mockImplementation(async () => {
    await new Promise((resolve) => setTimeout(resolve, 30));
    return spanish;
  });
  const all = catalogue.whole();
  const turning = catalogue.use('es');
  await all;
  expect(catalogue.words.shed.unit.kg).toBe('kilogramos');
  await turning;
  slow.mockRestore();
});

test('words that cannot be had leave the screen in those it has', async () => {
  const failing = vi.spyOn(LANGUAGES.es.first, 'get').mockRejectedValue(new Error('no server'));
  const all = vi.spyOn(LANGUAGES.es.whole, 'get').mockRejectedValue(new Error('no server'));
  app = mountApp({ ...BASE, language: 'es' }, 'home');
  await soon(() => expect(failing.mock.calls.length + all.mock.calls.length).toBeGreaterThan(0));
  expect(app.text('door-platform')).toContain('Weigh and dose');
  failing.mockRestore();
  all.mockRestore();
});

test('the page keeps its language for its next start', async () => {
  app = mountApp(BASE, 'home');
  expect(rememberedLanguage()).toBe('en');
  app.patch({ language: 'es' });
  await soon(() => expect(rememberedLanguage()).toBe('es'));
});

test('the other language is one tap away at Shed, by its own name', async () => {
  app = mountApp(BASE, 'shed/screen');
  expect(app.text('screen-language')).toBe('Español');
  app.click('screen-language');
  expect(app.socket.intents.at(-1)).toMatchObject({ type: 'set-language', language: 'es' });
});

test('whoever reads no English finds Spanish before the first words to be read', () => {
  app = mountApp({ ...BASE, safetyRead: false }, 'home');
  app.click('safety-language');
  expect(app.socket.intents.at(-1)).toMatchObject({ type: 'set-language', language: 'es' });
});

test('a kiosk that cannot read its settings keeps the language the page had, and says the remedy in it', async () => {
  const catalogue = new Catalogue();
  await catalogue.use('es');
  const problem = {
    code: 'config-invalid',
    file: 'kiosk.json',
    field: 'people',
    detail: 'not a list',
    remedy: 'Correct it.',
  } as const;
  app = mountApp({ ...BASE, language: 'en', problem }, 'home', {}, catalogue);
  expect(app.text('problem')).toContain('Corrija «people» en el archivo');
  expect(app.text('problem')).not.toContain('Correct it');
});

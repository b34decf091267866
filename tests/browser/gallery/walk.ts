import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { build } from 'vite';
import { startFakeServer } from '../../kiosk/preview/fake-server.mjs';
import '../../kiosk/gallery/gallery-page.ts';
import type { Scene } from '../../kiosk/preview/scene.ts';
import { openBrowser } from '../kiosk-page.ts';
import type { Panel } from './panels.ts';

const ROOT = fileURLToPath(new URL('../../../', import.meta.url));

/** The words a scene is shown in; `pseudo` is the English catalogue between marks and longer. */
export type SceneWords = 'en' | 'es' | 'pseudo';

/** A scene as it stands on the page. */
export interface Shown {
  readonly scene: Scene;
  readonly panel: Panel;
  readonly face: 'dim' | 'glare';
  readonly words: SceneWords;
}

/** Which scenes are walked through, and what is looked for. */
export interface Walk {
  readonly scenes: readonly Scene[];
  readonly panels: readonly Panel[];
  readonly faces: readonly Shown['face'][];
  readonly words: readonly SceneWords[];
  /** What is wrong with what is shown, one line each. */
  look(page: Page, shown: Shown): Promise<readonly string[]>;
}

/** The page of all scenes, built and served, with a browser. */
export interface Gallery {
  /** Shows each scene, and comes to what was wrong with them. Scenes are shared out among `pages` pages. */
  walk(walk: Walk, pages?: number): Promise<string[]>;
  close(): Promise<void>;
}

/** Builds the page of all scenes and opens a browser. */
export async function openGallery(): Promise<Gallery> {
  const built = mkdtempSync(join(tmpdir(), 'gallery-'));
  await build({
    configFile: join(ROOT, 'kiosk/vite.config.ts'),
    root: join(ROOT, 'tests/kiosk/gallery'),
    logLevel: 'error',
    build: { outDir: built, emptyOutDir: true },
  });
  const browser = await openBrowser();
  return {
    async walk(walk, pages = 1) {
      const hands = Array.from({ length: pages }, (_, hand) => ({
        ...walk,
        scenes: walk.scenes.filter((_, at) => at % pages === hand),
      }));
      return (await Promise.all(hands.map((part) => walkThrough(browser, built, part)))).flat();
    },
    async close() {
      await browser.close();
      rmSync(built, { recursive: true });
    },
  };
}

async function walkThrough(browser: Browser, built: string, walk: Walk): Promise<string[]> {
  const server = await startFakeServer(built);
  const context = await browser.newContext({ hasTouch: true, timezoneId: 'UTC', locale: 'en-US' });
  const page = await context.newPage();
  const said: string[] = [];
  page.on('console', (message) => message.type() === 'error' && said.push(message.text()));
  page.on('pageerror', (error) => said.push(error.message));
  const faults: string[] = [];
  try {
    await page.goto(server.url);
    for (const panel of walk.panels) {
      await page.setViewportSize({ width: panel.widthPx, height: panel.heightPx });
      for (const words of walk.words) {
        for (const scene of walk.scenes) {
          const language = words === 'en' ? 'en' : 'es';
          server.show({ ...scene.state, panel, language, face: walk.faces[0] }, scene.http, scene.visitor);
          const where = `${scene.name} ${panel.widthPx}x${panel.heightPx} ${words}`;
          const trouble = await opened(page, scene, words, () => scene.later && server.tell(scene.later));
          if (trouble !== null) {
            faults.push(`${where}: ${trouble}`);
            continue;
          }
          for (const face of facesOf(scene, walk)) {
            server.tell({ face });
            const found = (await wears(page, face))
              ? await walk.look(page, { scene, panel, face, words })
              : [`never came in this face: ${page.url()}`];
            faults.push(...[...found, ...said.splice(0)].map((fault) => `${where} ${face}: ${fault}`));
          }
        }
      }
    }
  } finally {
    await context.close();
    await server.close();
  }
  return faults;
}

/** A device that is not let in is told nothing, so its page has one face. */
function facesOf({ visitor }: Scene, { faces }: Walk): readonly Shown['face'][] {
  return visitor?.kind === 'stranger' ? faces.filter((face) => face === 'dim') : faces;
}

function wears(page: Page, face: Shown['face']): Promise<boolean> {
  return page.waitForSelector(`.kiosk[data-face="${face}"]`, { state: 'attached' }).then(
    () => true,
    () => false,
  );
}

/** Opens a scene and taps what it taps; comes to what went wrong, or to `null`. */
async function opened(
  page: Page,
  { place, taps = [] }: Scene,
  words: SceneWords,
  then: () => void,
): Promise<string | null> {
  let at = 'opened';
  try {
    await page.evaluate(([to, how]) => window.gallery.open(to, how), [place, words] as const);
    then();
    for (const tap of taps) {
      at = `pressed ${tap}`;
      await page.evaluate((each) => window.gallery.press(each), tap);
    }
    return null;
  } catch (error) {
    return `${at}: ${error instanceof Error ? error.message : error}`;
  }
}
